import { handPoint, isWaterParameter } from '@ebbline/shared/contract/water-parameters';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { waterParameterOf } from '../../alarm-rules/water-in-force';
import type { CompiledUnit } from '../../site/compiled-site';
import type { CompiledWaterParameter } from '../../site/compiled-water';
import { reasonBit } from '../../slots/quality-reasons';
import type { HandAction, HandFault, HandOutcome, HandRecord } from '../hand-record';
import type { PipelineState } from '../pipeline-state';
import { checkTyped } from './check-typed';
import type { HandBook } from './hand-book';
import { writeHand } from './write-hand';

/** Records what is about to be taken in; false where it can't, and then it is not. */
export type HandCommit = (record: HandRecord) => boolean;

/** Takes in a value that a person typed, or corrects or withdraws one, if `commit` takes it; else nothing has changed. */
export function actOnHand(
  pipeline: PipelineState,
  action: HandAction,
  nowMs: number,
  commit: HandCommit = () => true,
): HandOutcome {
  const unit = pipeline.site.units.find(({ id }) => id === action.unit);
  if (unit === undefined) return refused('UNIT_UNKNOWN', `the site has no unit ${action.unit}`);
  const before = action.kind === 'enterByHand' ? null : pipeline.hand.find(unit.id, action.entry);
  const found = parameterOf(pipeline, action, unit, before);
  if (!found.ok) return { ok: false, ...found.fault };
  const parameter = found.value;
  const checked = action.kind === 'withdrawByHand' ? ok(null) : checkTyped(action, unit, parameter, nowMs);
  if (!checked.ok) return { ok: false, ...checked.fault };
  const { by, corrects, note, station, takenMs, typed } = wordsOf(action, before);
  const id = freeId(pipeline, unit, parameter, nowMs);
  const names = { id, unit: unit.id, parameter: parameter.id };
  const record = { ...names, value: checked.value, typed, takenMs, enteredMs: nowMs, by, station, note, corrects };
  if (!commit(record))
    return refused('ACTION_NOT_RECORDED', 'the entry can not be recorded, so it was not taken in; try again');
  pipeline.hand.add(record);
  writeHand(pipeline, unit, parameter, nowMs);
  for (const ms of new Set([before?.takenMs ?? takenMs, takenMs])) writeHistory(pipeline, unit, parameter, ms);
  return { ok: true, record };
}

/** What history is to hold of the second of a sample; a bad value where that sample is no longer in force. */
function writeHistory(
  { hand, history }: PipelineState,
  unit: CompiledUnit,
  { id, handSlot }: CompiledWaterParameter,
  takenMs: number,
): void {
  const record = hand.inForceOfSecond(unit.id, id, takenMs);
  history.put(handSlot, takenMs, record?.value ?? Number.NaN, record === null ? reasonBit.senderFlag : 0);
}

function parameterOf(
  { hand }: PipelineState,
  action: HandAction,
  unit: CompiledUnit,
  before: HandRecord | null,
): Result<CompiledWaterParameter, HandFault> {
  if (action.kind !== 'enterByHand') {
    const fault = before === null ? unknownEntry(unit, action.entry) : settledAlready(hand, before);
    if (fault !== null) return fail(fault);
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

const unknownEntry = (unit: CompiledUnit, entry: string): HandFault => ({
  code: 'HAND_ENTRY_UNKNOWN',
  message: `unit ${unit.id} has no entry ${entry}; look at the list again`,
});

/** Why an entry can be corrected or withdrawn no more; null where it can. */
function settledAlready(hand: HandBook, before: HandRecord): HandFault | null {
  const corrector = hand.correctorOf(before.id);
  if (before.value === null || (corrector !== null && hand.find(before.unit, corrector)?.value === null))
    return {
      code: 'HAND_ENTRY_WITHDRAWN_ALREADY',
      message: 'it is withdrawn already; enter the value anew if it holds',
    };
  if (corrector === null) return null;
  return {
    code: 'HAND_ENTRY_CORRECTED_ALREADY',
    message: `entry ${corrector} stands in its place already; correct or withdraw that one`,
  };
}

/** Who says what of which sample. A withdrawal is of the sample of the entry that it withdraws. */
function wordsOf(action: HandAction, before: HandRecord | null) {
  const { note, operator: by, station } = action;
  const signed = { by, station, note, corrects: before?.id ?? null };
  if (action.kind === 'withdrawByHand') return { ...signed, takenMs: before?.takenMs ?? Number.NaN, typed: null };
  const { as, method = null, sampleTemperature, takenMs, unitOfMeasure: unit, value } = action;
  return { ...signed, takenMs, typed: { value, unit, as, sampleTemperature, method } };
}

/** Ids tell the time; a second entry of one millisecond is numbered. */
function freeId(
  { hand }: PipelineState,
  { id: unit }: CompiledUnit,
  { id }: CompiledWaterParameter,
  nowMs: number,
): string {
  const base = `${unit}:${handPoint(id)}:${Math.round(nowMs)}`;
  let free = base;
  for (let n = 2; hand.find(unit, free) !== null; n += 1) free = `${base}:${n}`;
  return free;
}

const refused = (code: HandFault['code'], message: string): HandOutcome => ({ ok: false, code, message });
