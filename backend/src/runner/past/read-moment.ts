import type { PastHall } from '@ebbline/shared/contract/past';
import { ok, type Result } from '@ebbline/shared/errors/result';
import { Origin, type CompiledSite, type Holder } from '../../evaluation/site/compiled-site';
import type { HistoryStore } from '../../ports/history-store';
import type { PastFault } from '../../ports/past-desk';
import { minuteAsSecond } from './minute-as-second';
import { columnsOf, leastBackMs, lookBackMs, slotsOf, wasRecorded, type Recorded } from './recorded-second';
import { silenceAround } from './silence-around';

export interface Moment {
  readonly recorded: readonly Recorded[];
  readonly silent: PastHall['silent'];
  /** minute: of then only minutes are kept; values are means of the one in which the second lies. */
  readonly resolution: PastHall['resolution'];
}

type Store = Pick<HistoryStore, 'read' | 'readSeconds' | 'readTogether' | 'readMinute'>;

const minuteMs = 60_000;

/** Of what is worked out of a unit the Hall screen draws these; a statement over hundreds of columns takes the store a tenth of a second. */
const drawnOfHall = new Set([
  'heatRemoved',
  'chipPower',
  'drivingPressure',
  'vacuumReserve',
  'openingsCarried',
  'openingsCarriedAll',
  'lowerWallMargin',
  'vacuumMargin',
  'vacuumMarginWorst',
]);

/** Slots that a picture needs: all that is measured, and what is drawn of what is worked out. */
function wantedOf({ slots }: CompiledSite, holder: Holder, picture: 'hall' | 'loop'): number[] {
  const all = slotsOf(holder);
  if (picture === 'loop' || holder.kind === 'hall') return all;
  return all.filter((slot) => slots.measured[slot] === Origin.measured || drawnOfHall.has(slots.pointId[slot] ?? ''));
}

/** Holders with the slots that are read of each; points that are told seldom apart, as they are looked for further back. */
interface Wanted {
  readonly holder: number;
  readonly id: string;
  readonly slots: readonly number[];
}

/** What was recorded of some holders up to the end of a second, as far as a picture needs it; of the minute where seconds are gone. */
export async function readMoment(
  store: Store,
  site: CompiledSite,
  holders: readonly number[],
  picture: 'hall' | 'loop',
  atMs: number,
  nowMs: number,
): Promise<Result<Moment, PastFault>> {
  const wanted = holders.flatMap((holder): Wanted[] => {
    const found = site.holders[holder];
    return found === undefined ? [] : [{ holder, id: found.id, slots: wantedOf(site, found, picture) }];
  });
  const isSeldom = (slot: number): boolean => lookBackMs(site, slot) > leastBackMs;
  const often = await readOf(
    store,
    site,
    only(wanted, (slot) => !isSeldom(slot)),
    atMs,
    leastBackMs,
  );
  const minutesBeforeMs = Math.max(-Infinity, ...often.map(({ seconds }) => seconds.minutesBeforeMs));
  const byMinute = atMs < minutesBeforeMs;
  const recorded = byMinute
    ? await readMinuteOf(store, site, wanted, Math.floor(atMs / minuteMs) * minuteMs)
    : [...often, ...(await readSeldom(store, site, only(wanted, isSeldom), atMs))];
  const resolution = byMinute ? 'minute' : 'second';
  if (recorded.some(wasRecorded)) return ok({ recorded, silent: null, resolution });
  const silence = await silenceAround(store, site, holders, atMs, nowMs);
  return silence.ok ? ok({ recorded, silent: silence.value, resolution }) : silence;
}

/** A holder of which nothing is wanted has none, but is asked for all the same: it tells how far back seconds are kept. */
const only = (wanted: readonly Wanted[], isWanted: (slot: number) => boolean): Wanted[] =>
  wanted.map((one) => ({ ...one, slots: one.slots.filter(isWanted) }));

async function readOf(
  store: Store,
  site: CompiledSite,
  wanted: readonly Wanted[],
  atMs: number,
  backMs: number,
): Promise<Recorded[]> {
  const holders = wanted.map(({ id, slots }) => ({ holder: id, columns: columnsOf(site, slots) }));
  const read = await store.readTogether({ holders, fromMs: atMs + 1000 - backMs, toMs: atMs + 1000 });
  return wanted.flatMap(({ holder, slots }, i): Recorded[] => {
    const seconds = read[i];
    return seconds === undefined ? [] : [{ holder, slots, seconds }];
  });
}

function readSeldom(store: Store, site: CompiledSite, wanted: readonly Wanted[], atMs: number): Promise<Recorded[]> {
  const some = wanted.filter(({ slots }) => slots.length > 0);
  if (some.length === 0) return Promise.resolve([]);
  const backMs = Math.max(...some.flatMap(({ slots }) => slots.map((slot) => lookBackMs(site, slot))));
  return readOf(store, site, some, atMs, backMs);
}

async function readMinuteOf(
  store: Store,
  site: CompiledSite,
  wanted: readonly Wanted[],
  startMs: number,
): Promise<Recorded[]> {
  const holders = wanted.map(({ id, slots }) => ({ holder: id, columns: columnsOf(site, slots) }));
  const minutes = await store.readMinute({ holders, minuteMs: startMs });
  return wanted.flatMap(({ holder, slots }, i): Recorded[] => {
    const minute = minutes[i];
    if (minute === undefined) return [];
    return [{ holder, slots, seconds: minuteAsSecond(site, slots, minute, startMs), byMinute: true }];
  });
}
