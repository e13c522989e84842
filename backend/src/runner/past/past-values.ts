import { deriveHall } from '../../evaluation/derive/derive-hall';
import { deriveUnit } from '../../evaluation/derive/derive-unit';
import type { HandRecord } from '../../evaluation/pipeline/hand-record';
import { HandBook } from '../../evaluation/pipeline/hand/hand-book';
import { watchHand, writeHand } from '../../evaluation/pipeline/hand/write-hand';
import type { ModeFound } from '../../evaluation/pipeline/mode-of-unit';
import { isStanding } from '../../evaluation/pipeline/standing-water';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import { reasonBit } from '../../evaluation/slots/quality-reasons';
import { createSlotState, type SlotState } from '../../evaluation/slots/slot-state';
import { modeOfPast } from './mode-of-past';
import { putDerived } from './put-derived';
import { putRecorded, type Recorded } from './recorded-second';

export interface PastValues {
  readonly state: SlotState;
  readonly modeOf: (unit: number) => ModeFound;
}

/**
 * The slots as they stood at the end of a second, of those holders that were read; the rest of the site stays empty. All at once,
 * as the judge that runs beside it works with the same plans.
 * @param hand what people had typed by then
 */
export function pastValues(
  site: CompiledSite,
  recorded: readonly Recorded[],
  hand: readonly HandRecord[],
  nowMs: number,
): PastValues {
  const state = createSlotState(site.slots.count);
  state.reasons.fill(reasonBit.notRecorded);
  const stored = recorded.map((one) => putRecorded(site, state, one));
  const read = new Set(recorded.map(({ holder }) => holder));
  const modeOf = (unit: number): ModeFound => modeOfPast(site, state, unit);
  putHand(site, state, hand, nowMs);
  for (const [at, hall] of site.halls.entries()) if (read.has(hall.holder)) deriveHall(site, state, at, nowMs);
  for (const [at, unit] of site.units.entries())
    if (read.has(unit.holder)) deriveUnit(site, state, at, nowMs, isStanding(modeOf(at)));
  for (const one of stored.flat()) putDerived(state, one);
  return { state, modeOf };
}

function putHand(site: CompiledSite, state: SlotState, records: readonly HandRecord[], nowMs: number): void {
  const hand = new HandBook();
  for (const record of records) if (record.enteredMs <= nowMs) hand.add(record);
  for (const unit of site.units) {
    for (const parameter of unit.water.parameters) writeHand({ hand, state }, unit, parameter, nowMs);
    watchHand({ state }, unit, nowMs);
  }
}
