import { unitPlan } from '../../derive/unit-plan';
import type { PipelineState } from '../pipeline-state';
import type {
  EndTightness,
  StartTightness,
  TightnessChange,
  TightnessOutcome,
  TightnessRecord,
} from '../tightness-record';
import type { TightnessAction } from '../tightness-record';
import { tightnessRefusals } from './refusals';
import { ended } from './so-far';
import { gasNow, gasRoom } from './unit-gas';

/** Records what is about to happen; false where it can't, and then it does not happen. */
export type TightnessCommit = (change: TightnessChange) => boolean;

/** Starts or ends a pressure-rise test, if `commit` takes it; else nothing has changed. */
export function actOnTightness(
  pipeline: PipelineState,
  action: TightnessAction,
  nowMs: number,
  commit: TightnessCommit = () => true,
): TightnessOutcome {
  const unitIndex = pipeline.site.units.findIndex(({ id }) => id === action.unit);
  if (unitIndex < 0) return { ok: false, code: 'UNIT_UNKNOWN', message: `the site has no unit ${action.unit}` };
  const found =
    action.kind === 'startTightness' ? starting(pipeline, action, unitIndex, nowMs) : ending(pipeline, action, nowMs);
  if (!found.ok) return found;
  const { change } = found;
  if (!commit(change)) {
    const message = `test ${change.test.id} can not be recorded, so it was not ${change.what}; try again`;
    return { ok: false, code: 'ACTION_NOT_RECORDED', message };
  }
  if (change.what === 'started') pipeline.tightness.begin(change.test, nowMs);
  else pipeline.tightness.end(change.test);
  return found;
}

function starting(pipeline: PipelineState, action: StartTightness, unitIndex: number, nowMs: number): TightnessOutcome {
  const runs = pipeline.tightness.running.get(action.unit);
  if (runs !== undefined) {
    const message = `test ${runs.record.id} of ${runs.record.startedBy} runs at this unit; end that first`;
    return { ok: false, code: 'TIGHTNESS_RUNNING', message };
  }
  const other = pipeline.guided.open.get(action.unit)?.record;
  if (other !== undefined) {
    const message = `test ${other.id} of ${other.startedBy} goes on at this unit; end that first`;
    return { ok: false, code: 'TIGHTNESS_RUNNING', message };
  }
  const refusals = tightnessRefusals(pipeline, unitIndex, action);
  const [first] = refusals;
  if (first !== undefined)
    return { ok: false, code: first.code, message: refusals.map(({ message }) => message).join('; ') };
  const test = recordOf(pipeline, action, unitIndex, nowMs);
  if (test.begin.gasVolumeM3 > 0) return { ok: true, change: changed('started', test, action, nowMs) };
  const message = 'the level leaves no room for gas by the site file; check separator level, area and volumes';
  return { ok: false, code: 'TIGHTNESS_NO_VOLUME', message };
}

function recordOf(pipeline: PipelineState, action: StartTightness, unitIndex: number, nowMs: number): TightnessRecord {
  const plan = unitPlan(pipeline.site, unitIndex);
  const { pressurePa, temperatureC, levelM } = gasNow(pipeline, unitIndex);
  const room = gasRoom(plan.unit, plan, action.dry, action.gasVolumeM3, levelM);
  return {
    id: `${action.unit}:tightness:${Math.round(nowMs)}`,
    unit: action.unit,
    startedBy: action.operator,
    station: action.station,
    startedMs: nowMs,
    plannedMs: action.plannedMs,
    acceptanceLimitM3PerS: action.acceptanceLimitM3PerS,
    dry: action.dry,
    sourceIsolated: action.sourceIsolated,
    gasVolumeStatedM3: action.gasVolumeM3,
    comment: action.comment,
    begin: {
      pressurePa,
      temperatureC,
      levelM: (room?.areaM2 ?? 0) > 0 ? levelM : null,
      gasVolumeM3: room?.volumeM3 ?? 0,
      areaM2: room?.areaM2 ?? 0,
    },
    samples: 0,
    result: null,
    steadiness: 'tooEarly',
    verdict: null,
    endedFor: null,
    endedBy: null,
    endedMs: null,
  };
}

function ending(pipeline: PipelineState, action: EndTightness, nowMs: number): TightnessOutcome {
  const run = pipeline.tightness.running.get(action.unit);
  if (run?.record.id !== action.test) {
    const message = `no test ${action.test} runs at unit ${action.unit}; look at the list again, it may have ended`;
    return { ok: false, code: 'TIGHTNESS_UNKNOWN', message };
  }
  const test = ended(pipeline, run, 'endedByPerson', action.operator, nowMs);
  return { ok: true, change: changed('ended', test, action, nowMs) };
}

const changed = (
  what: TightnessChange['what'],
  test: TightnessRecord,
  { operator, station, comment }: TightnessAction,
  atMs: number,
): TightnessChange => ({ what, test, atMs, actor: operator, station, comment });
