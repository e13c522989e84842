import { isStale, staleAfterMs } from '../../evaluation/quality/stale';
import { Origin, type CompiledSite, type Holder } from '../../evaluation/site/compiled-site';
import { reasonBit } from '../../evaluation/slots/quality-reasons';
import type { SlotState } from '../../evaluation/slots/slot-state';
import type { HistoryColumn, HistorySeconds } from '../../ports/history-store';

/** As history marks a value. */
const mark = { nothing: 0, good: 1, uncertain: 2, bad: 3 } as const;
/** A tick that was late by so much left a second without a row of what is derived: the row before it stood then. Seconds. */
const rowsHeld = 2;
/** So far back everything is read, so that what has just gone silent is shown with its age. */
export const leastBackMs = 60_000;
const mostBackMs = 900_000;

/** Of one holder what was recorded up to a second. */
export interface Recorded {
  readonly holder: number;
  readonly slots: readonly number[];
  /** A column a slot. */
  readonly seconds: HistorySeconds;
  /** One second stands for a minute: what has no figure in it may have been bad as well as not applicable. */
  readonly byMinute?: boolean;
}

/** What was worked out then and stored, to be put over what is worked out anew. */
export interface StoredDerived {
  readonly slot: number;
  /** 0: nothing was stored although the program ran. */
  readonly mark: number;
  readonly value: number;
  readonly atMs: number;
}

/** How far back it has to be read for what stood in a second: until the point would be stale. Whole seconds, ms. */
export function lookBackMs({ slots }: Pick<CompiledSite, 'slots'>, slot: number): number {
  const longest =
    slots.measured[slot] === Origin.measured ? Math.max(leastBackMs, staleAfterMs(slots, slot)) : leastBackMs;
  return Math.ceil(Math.min(longest, mostBackMs) / 1000) * 1000;
}

/** Every slot of a holder. */
export const slotsOf = ({ firstSlot, slotCount }: Holder): number[] =>
  Array.from({ length: slotCount }, (_, i) => firstSlot + i);

export const columnsOf = ({ slots }: CompiledSite, wanted: readonly number[]): HistoryColumn[] =>
  wanted.map((slot) => ({ point: slots.pointId[slot] ?? '', unitOfMeasure: slots.unitOfMeasure[slot] ?? '1' }));

/** Whether anything at all was recorded within the last seconds of what was read. */
export function wasRecorded({ seconds: { count, quality } }: Recorded): boolean {
  return quality.some((column) =>
    column.subarray(Math.max(0, count - 1 - rowsHeld)).some((one) => one !== mark.nothing),
  );
}

/**
 * Puts what was measured into its slots as it stood at the end of the last second read: the newest value of each point, with its
 * age, and stale where it would have been. Gives back what was derived then, which is not put: it is worked out anew first.
 */
export function putRecorded(site: CompiledSite, state: SlotState, recorded: Recorded): StoredDerived[] {
  const ran = wasRecorded(recorded);
  const stored: StoredDerived[] = [];
  for (const [i, slot] of recorded.slots.entries()) {
    const origin = site.slots.measured[slot];
    if (origin === Origin.measured) putMeasured(site, state, slot, i, recorded);
    else if (origin === Origin.derived) stored.push(derivedAt(slot, i, recorded, ran && recorded.byMinute !== true));
  }
  return stored;
}

/** End of a second, so that what came within it has no age at its end. */
const endOf = ({ fromMs }: HistorySeconds, place: number): number => fromMs + place * 1000 + 999;

function putMeasured(site: CompiledSite, state: SlotState, slot: number, column: number, { seconds }: Recorded): void {
  const quality = seconds.quality[column];
  let place = seconds.count - 1;
  while (place >= 0 && (quality?.[place] ?? mark.nothing) === mark.nothing) place -= 1;
  if (place < 0) {
    state.reasons[slot] = reasonBit.notRecorded;
    return;
  }
  const atMs = endOf(seconds, place);
  const told = quality?.[place];
  state.value[slot] = told === mark.bad ? Number.NaN : (seconds.values[column]?.[place] ?? Number.NaN);
  state.sourceMs[slot] = atMs;
  state.acceptedMs[slot] = atMs;
  state.unchangedSinceMs[slot] = atMs;
  const stale = isStale(site.slots, slot, atMs, endOf(seconds, seconds.count - 1)) ? reasonBit.stale : 0;
  state.reasons[slot] =
    stale | (told === mark.bad ? reasonBit.badThen : told === mark.uncertain ? reasonBit.uncertainThen : 0);
}

function derivedAt(slot: number, column: number, { seconds }: Recorded, ran: boolean): StoredDerived {
  const last = seconds.count - 1;
  const quality = seconds.quality[column];
  for (let place = last; place >= Math.max(0, last - rowsHeld); place -= 1) {
    const told = quality?.[place] ?? mark.nothing;
    if (told === mark.nothing) continue;
    const value = seconds.values[column]?.[place] ?? Number.NaN;
    return { slot, mark: told, value: told === mark.bad ? Number.NaN : value, atMs: endOf(seconds, place) };
  }
  return { slot, mark: ran ? mark.nothing : -1, value: Number.NaN, atMs: Number.NaN };
}
