import type { GuidedRefusal } from '@ebbline/shared/contract/guided-test';
import { coverageFactor } from '@ebbline/shared/uncertainty/combine';
import type { PipelineState } from '../pipeline-state';
import { breakOff } from './break-off';
import { checkAsked } from './check-asked';
import { otherTest, shutGates } from './guided-gates';
import type {
  CancelGuided,
  ConfirmGuided,
  GuidedAction,
  GuidedChange,
  GuidedOutcome,
  GuidedRecord,
  Instrument,
  StartGuided,
} from './guided-record';
import { measurePlan, stepsAtStart } from './guided-steps';
import { guidedTable } from './guided-table';
import type { GuidedTestKind } from './guided-test';
import { ambientU, guidedView, uOf, type GuidedView } from './guided-view';
import { movedOn } from './move-on';
import { quantityOfPoint } from './quantity-of-point';

/** Records what is about to happen; false where it can't, and then it does not happen. */
export type GuidedCommit = (change: GuidedChange) => boolean;

/** Starts a test, confirms its present step, or cancels it, if `commit` takes it; else nothing has changed. */
export function actOnGuided(
  pipeline: PipelineState,
  action: GuidedAction,
  nowMs: number,
  commit: GuidedCommit = () => true,
): GuidedOutcome {
  const unitIndex = pipeline.site.units.findIndex(({ id }) => id === action.unit);
  if (unitIndex < 0) return { ok: false, code: 'UNIT_UNKNOWN', message: `the site has no unit ${action.unit}` };
  const found = outcomeOf(pipeline, action, unitIndex, nowMs);
  if (!found.ok) return found;
  const { test } = found.change;
  if (!commit(found.change)) {
    const message = `test ${test.id} can not be recorded, so nothing was done; try again`;
    return { ok: false, code: 'ACTION_NOT_RECORDED', message };
  }
  const plan = measurePlan(guidedTable[test.kind], guidedView(pipeline, unitIndex, test.settings, test.steps), test);
  pipeline.guided.put(test, nowMs, plan);
  return found;
}

function outcomeOf(pipeline: PipelineState, action: GuidedAction, unitIndex: number, nowMs: number): GuidedOutcome {
  if (action.act === 'start') return starting(pipeline, action, unitIndex, nowMs);
  const record = pipeline.guided.records.get(action.test);
  if (record?.unit !== action.unit)
    return { ok: false, code: 'GUIDED_UNKNOWN', message: `unit ${action.unit} has no test ${action.test}` };
  if (record.state === 'ended')
    return { ok: false, code: 'GUIDED_ENDED', message: `test ${record.id} has ended; look at its record` };
  if (action.act === 'cancel') return cancelling(pipeline, record, action, nowMs);
  return confirming(guidedView(pipeline, unitIndex, record.settings, record.steps), record, action, nowMs);
}

function starting(pipeline: PipelineState, action: StartGuided, unitIndex: number, nowMs: number): GuidedOutcome {
  const test = guidedTable[action.kind];
  const other = otherTest(pipeline, action.unit);
  if (other !== null) return { ok: false, ...other };
  const asked = checkAsked(test.asks, action.settings);
  if (!asked.ok) return { ok: false, code: 'GUIDED_SETTING', message: asked.message };
  const view = guidedView(pipeline, unitIndex, asked.given);
  const fault = test.settingFault?.(view, action.operator) ?? null;
  if (fault !== null) return { ok: false, code: 'GUIDED_SETTING', message: fault };
  const refused = refusal(shutGates(view, test));
  if (refused !== null) return refused;
  const record: GuidedRecord = {
    id: newId(pipeline, `${action.unit}:${action.kind}:${Math.round(nowMs)}`),
    unit: action.unit,
    kind: action.kind,
    startedBy: action.operator,
    station: action.station,
    startedMs: nowMs,
    comment: action.comment,
    settings: asked.given,
    steps: stepsAtStart(test, view),
    at: 0,
    state: 'confirm',
    instruments: instrumentsOf(test, view),
    result: null,
    verdict: null,
    endedFor: null,
    endedSaid: null,
    endedBy: null,
    endedMs: null,
  };
  return { ok: true, change: changed('started', record, action, nowMs) };
}

const needsPerson =
  'a token can not confirm this step, as a person has to see what it says; sign in yourself and confirm it';

/** No record takes the place of another, where two tests begin in one millisecond. */
function newId({ guided }: PipelineState, wanted: string): string {
  let id = wanted;
  for (let n = 2; guided.records.has(id); n += 1) id = `${wanted}-${n}`;
  return id;
}

function confirming(view: GuidedView, record: GuidedRecord, action: ConfirmGuided, nowMs: number): GuidedOutcome {
  const test = guidedTable[record.kind];
  const step = record.steps[record.at];
  if (step === undefined || record.state !== 'confirm' || step.id !== action.step) {
    const message = `step ${action.step} can not be confirmed: the test stands at ${step?.id ?? 'its end'}`;
    return { ok: false, code: 'GUIDED_STEP', message };
  }
  const plan = test.steps(view).find(({ id }) => id === step.id);
  const forOne = plan?.kind === 'confirm' ? plan.notFor : undefined;
  const notFor = forOne === undefined ? null : action.byToken === true ? needsPerson : forOne(view, action.operator);
  if (notFor !== null) return { ok: false, code: 'GUIDED_SECOND', message: notFor };
  const asked = checkAsked(step.asks, action.given);
  if (!asked.ok) return { ok: false, code: 'GUIDED_SETTING', message: asked.message };
  const refused = refusal(shutGates(view, test));
  if (refused !== null) return refused;
  const done = { by: action.operator, given: asked.given, comment: action.comment };
  const next = movedOn(test, view, record, done, nowMs);
  return { ok: true, change: changed(next.state === 'ended' ? 'ended' : 'confirmed', next, action, nowMs) };
}

function cancelling(pipeline: PipelineState, record: GuidedRecord, action: CancelGuided, nowMs: number): GuidedOutcome {
  const ended = breakOff(pipeline, record, { endedFor: 'cancelled', said: null, by: action.operator }, nowMs);
  return { ok: true, change: changed('ended', ended, action, nowMs) };
}

function refusal(found: readonly GuidedRefusal[]): GuidedOutcome | null {
  const [first] = found;
  if (first === undefined) return null;
  return { ok: false, code: first.code, message: found.map(({ message }) => message).join('; ') };
}

const instrumentsOf = (test: GuidedTestKind, view: GuidedView): readonly Instrument[] =>
  test.points(view).map((point) => {
    const u = point === 'ambient.pressure' ? ambientU(view) : uOf(view, point);
    return {
      point,
      expandedUncertainty: Number.isNaN(u) ? null : coverageFactor * u,
      quantity: quantityOfPoint(point),
    };
  });

const changed = (
  what: GuidedChange['what'],
  test: GuidedRecord,
  { operator, station, comment }: GuidedAction,
  atMs: number,
): GuidedChange => ({ what, test, atMs, actor: operator, station, comment });
