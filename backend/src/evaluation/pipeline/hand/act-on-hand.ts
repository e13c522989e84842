import { handPoint, isWaterParameter } from '@ebbline/shared/contract/water-parameters';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { waterParameterOf } from '../../alarm-rules/water-in-force';
import type { CompiledUnit } from '../../site/compiled-site';
import type { CompiledWaterParameter } from '../../site/compiled-water';
import { reasonBit } from '../../slots/quality-reasons';
import type { HandAction, HandFault, HandOutcome, HandRecord } from '../hand-record';
import type { PipelineState } from '../pipeline-state';
import { checkTyped } from './check-typed';
import { writeHand } from './write-hand';

/** Records what is about to be taken in; false where it can't, and then it is not. */
export type HandCommit = (record: HandRecord) => boolean;

/** Takes in a value that a person typed, or a correction of one, if `commit` takes it; else nothing has changed. */
export function actOnHand(
  pipeline: PipelineState,
  action: HandAction,
  nowMs: number,
  commit: HandCommit = () => true,
): HandOutcome {
  const unit = pipeline.site.units.find(({ id }) => id === action.unit);
  if (unit === undefined) return refused('UNIT_UNKNOWN', `the site has no unit ${action.unit}`);
  const before = action.kind === 'correctByHand' ? pipeline.hand.find(unit.id, action.entry) : null;
  const found = parameterOf(pipeline, action, unit, before);
  if (!found.ok) return { ok: false, ...found.fault };
  const parameter = found.value;
  const checked = checkTyped(action, unit, parameter, nowMs);
  if (!checked.ok) return { ok: false, ...checked.fault };
  const record = toRecord(pipeline, action, unit, parameter, checked.value, nowMs);
  if (!commit(record))
    return refused('ACTION_NOT_RECORDED', 'the entry can not be recorded, so it was not taken in; try again');
  pipeline.hand.add(record);
  writeHand(pipeline, unit, parameter, nowMs);
  // A bad value takes the place of what history had at the time of a sample that is no longer what it was.
  if (before !== null) pipeline.history.put(parameter.handSlot, before.takenMs, Number.NaN, reasonBit.senderFlag);
  if (record.value !== null) pipeline.history.put(parameter.handSlot, record.takenMs, record.value, 0);
  return { ok: true, record };
}

function parameterOf(
  { hand }: PipelineState,
  action: HandAction,
  unit: CompiledUnit,
  before: HandRecord | null,
): Result<CompiledWaterParameter, HandFault> {
  if (action.kind === 'correctByHand') {
    if (before === null)
      return fail({
        code: 'HAND_ENTRY_UNKNOWN',
        message: `unit ${unit.id} has no entry ${action.entry}; look at the list again`,
      });
    const corrector = hand.correctorOf(before.id);
    if (corrector !== null)
      return fail({
        code: 'HAND_ENTRY_CORRECTED_ALREADY',
        message: `entry ${corrector} stands in its place already; correct that one`,
      });
  }
  const id = action.kind === 'enterByHand' ? action.parameter : (before?.parameter ?? '');
  const parameter = isWaterParameter(id) ? waterParameterOf(unit, id) : null;
  if (parameter !== null && parameter.handSlot >= 0) return ok(parameter);
  const known = unit.water.parameters.filter(({ handSlot }) => handSlot >= 0).map((one) => one.id);
  return fail({
    code: 'HAND_ENTRY_PARAMETER',
    message: `"${id}" is not typed at unit ${unit.id}; ${known.length === 0 ? 'no parameter is: name some in the site file, under water' : `known are ${known.join(', ')}`}`,
  });
}

function toRecord(
  { hand }: PipelineState,
  action: HandAction,
  unit: CompiledUnit,
  { id: parameter }: CompiledWaterParameter,
  value: number | null,
  nowMs: number,
): HandRecord {
  const { as, note, operator: by, sampleTemperature, station, takenMs, unitOfMeasure } = action;
  const base = `${unit.id}:${handPoint(parameter)}:${Math.round(nowMs)}`;
  let id = base;
  for (let n = 2; hand.find(unit.id, id) !== null; n += 1) id = `${base}:${n}`;
  return {
    id,
    unit: unit.id,
    parameter,
    value,
    typed: action.value === null ? null : { value: action.value, unit: unitOfMeasure, as, sampleTemperature },
    takenMs,
    enteredMs: nowMs,
    by,
    station,
    note,
    corrects: action.kind === 'correctByHand' ? action.entry : null,
  };
}

const refused = (code: HandFault['code'], message: string): HandOutcome => ({ ok: false, code, message });
