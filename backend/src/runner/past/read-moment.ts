import type { PastHall } from '@ebbline/shared/contract/past';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { HourExtremes } from '../../evaluation/derive/pressure-window';
import { Origin, type CompiledSite, type Holder } from '../../evaluation/site/compiled-site';
import type { HistoryStore } from '../../ports/history-store';
import type { PastFault } from '../../ports/past-desk';
import { timeText } from '../views/time-text';
import { columnsOf, lookBackMs, slotsOf, wasRecorded, type Recorded } from './recorded-second';
import { silenceAround } from './silence-around';

export interface Moment {
  readonly recorded: readonly Recorded[];
  readonly silent: PastHall['silent'];
  readonly hour: ReadonlyMap<number, HourExtremes>;
}

type Store = Pick<HistoryStore, 'read' | 'readSeconds'>;

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

/** What was recorded of some holders up to the end of a second, as far as a picture needs it. */
export async function readMoment(
  store: Store,
  site: CompiledSite,
  holders: readonly number[],
  picture: 'hall' | 'loop',
  atMs: number,
  nowMs: number,
): Promise<Result<Moment, PastFault>> {
  const recorded: Recorded[] = [];
  for (const holder of holders) {
    const found = site.holders[holder];
    if (found === undefined) continue;
    const fromMs = atMs + 1000 - lookBackMs(site, found);
    const slots = wantedOf(site, found, picture);
    const columns = columnsOf(site, slots);
    const seconds = await store.readSeconds({ holder: found.id, columns, fromMs, toMs: atMs + 1000 });
    if (atMs < seconds.minutesBeforeMs) return fail(onlyMinutes(seconds.minutesBeforeMs));
    recorded.push({ holder, slots, seconds });
  }
  if (recorded.some(wasRecorded)) return ok({ recorded, silent: null, hour: new Map() });
  const silence = await silenceAround(store, site, holders, atMs, nowMs);
  return silence.ok ? ok({ recorded, silent: silence.value, hour: new Map() }) : silence;
}

const onlyMinutes = (beforeMs: number): PastFault => ({
  code: 'PAST_NOT_KEPT',
  message: `Of before ${timeText(beforeMs) ?? ''} only minutes are kept, of which no picture can be put together; the Trends screen shows them.`,
});
