import { splitPoint } from '@ebbline/shared/contract/point-table';
import { deriveHall } from '../../evaluation/derive/derive-hall';
import { pressureWindow, type HourExtremes } from '../../evaluation/derive/pressure-window';
import type { HourTrail } from '../../evaluation/pipeline/hour-extremes';
import { isStanding } from '../../evaluation/pipeline/standing-water';
import { Origin, type CompiledSite, type Holder } from '../../evaluation/site/compiled-site';
import { reasonBit } from '../../evaluation/slots/quality-reasons';
import { createSlotState, type SlotState } from '../../evaluation/slots/slot-state';
import type { HistoryStore } from '../../ports/history-store';
import { modeOfPast } from './mode-of-past';
import { columnsOf, putRecorded, slotsOf, type Recorded } from './recorded-second';

const hourMs = 3_600_000;
const minuteMs = 60_000;
const minutes = 60;
/** Of each minute so many seconds are read, for points that are told every few seconds; the loop is looked at once, at their end. */
const lookedAtMs = 10_000;
/** Bounds memory, and lets the judge run between. */
const unitsAtOnce = 20;
const noHour: HourExtremes = { lowestPa: null, highestPa: null };

/**
 * Lowest and highest wetted pressure of some units minute by minute over the hour before a time, worked out anew from what was measured,
 * one look a minute: a swing that is over within the minute may be missing. A minute without any stays open.
 * @param untilMs end of the second that is shown; its minute is the last
 */
export async function hourBefore(
  store: Pick<HistoryStore, 'readTogether'>,
  site: CompiledSite,
  units: readonly number[],
  untilMs: number,
): Promise<ReadonlyMap<number, HourTrail>> {
  const endMs = Math.floor(untilMs / 1000) * 1000;
  const lastMinute = minuteOf(endMs - 1);
  const hours = new Map<number, Cells>();
  for (let from = 0; from < units.length; from += unitsAtOnce) {
    const some = units.slice(from, from + unitsAtOnce);
    const halls = [...new Set(some.map((unit) => site.units[unit]?.hall ?? -1))];
    const holders = [
      ...halls.map((hall) => site.halls[hall]?.holder ?? -1),
      ...some.map((unit) => site.units[unit]?.holder ?? -1),
    ];
    const recorded = await readHolders(store, site, holders, endMs - hourMs, endMs);
    const state = createSlotState(site.slots.count);
    state.reasons.fill(reasonBit.notRecorded);
    for (const unit of some) hours.set(unit, { lowestPa: open(), highestPa: open() });
    for (let atMs = firstLook(endMs - hourMs); atMs < endMs; atMs += minuteMs) {
      putAll(site, state, recorded, atMs);
      for (const hall of halls) deriveHall(site, state, hall, atMs + 999);
      const place = minutes - 1 + minuteOf(atMs) - lastMinute;
      for (const unit of some) look(hours.get(unit), place, site, state, unit, atMs + 999);
    }
  }
  return hours;
}

/** Lowest and highest of a whole trail; null of both where nothing was seen. */
export function extremesOf({ lowestPa, highestPa }: HourTrail): HourExtremes {
  const [low, high] = [lowestPa, highestPa].map((cells) => cells.filter((one) => one !== null));
  return {
    lowestPa: low === undefined || low.length === 0 ? null : Math.min(...low),
    highestPa: high === undefined || high.length === 0 ? null : Math.max(...high),
  };
}

interface Cells {
  readonly lowestPa: (number | null)[];
  readonly highestPa: (number | null)[];
}
const open = (): null[] => Array<null>(minutes).fill(null);
const minuteOf = (atMs: number): number => Math.floor(atMs / minuteMs);

/** The last second of the first ones of a minute. */
const firstLook = (fromMs: number): number => Math.ceil(fromMs / minuteMs) * minuteMs + lookedAtMs - 1000;

async function readHolders(
  store: Pick<HistoryStore, 'readTogether'>,
  site: CompiledSite,
  holders: readonly number[],
  fromMs: number,
  toMs: number,
): Promise<Recorded[]> {
  const wanted = holders.flatMap((holder) => {
    const found = site.holders[holder];
    return found === undefined ? [] : [{ holder, id: found.id, slots: ofTheLoop(site, found) }];
  });
  const asked = wanted.map(({ id, slots }) => ({ holder: id, columns: columnsOf(site, slots) }));
  const read = await store.readTogether({ holders: asked, fromMs, toMs, ofEachMinuteMs: lookedAtMs });
  return wanted.flatMap(({ holder, slots }, i): Recorded[] => {
    const seconds = read[i];
    return seconds === undefined ? [] : [{ holder, slots, seconds }];
  });
}

/** What is measured of the loop as a whole: pressures of its nodes rest on nothing of a branch, server or plate. */
const ofTheLoop = ({ slots }: CompiledSite, holder: Holder): number[] =>
  slotsOf(holder).filter(
    (slot) => slots.measured[slot] === Origin.measured && splitPoint(slots.pointId[slot] ?? '') === null,
  );

function putAll(site: CompiledSite, state: SlotState, recorded: readonly Recorded[], atMs: number): void {
  for (const one of recorded) {
    const count = (atMs - one.seconds.fromMs) / 1000 + 1;
    putRecorded(site, state, { ...one, seconds: { ...one.seconds, count } });
  }
}

function look(
  cells: Cells | undefined,
  place: number,
  site: CompiledSite,
  state: SlotState,
  unit: number,
  atMs: number,
): void {
  const now = pressureWindow(site, state, unit, atMs, noHour, isStanding(modeOfPast(site, state, unit)));
  // One without the other is no observation, as in the hour that is live.
  if (cells === undefined || now.lowestPa === null || now.highestPa === null) return;
  cells.lowestPa[place] = now.lowestPa;
  cells.highestPa[place] = now.highestPa;
}
