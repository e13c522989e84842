import type { PastHall } from '@ebbline/shared/contract/past';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { HistoryStore } from '../../ports/history-store';
import type { PastFault } from '../../ports/past-desk';
import { timeText } from '../views/time-text';
import { readTraces } from './traces';

const dayMs = 86_400_000;
const minuteMs = 60_000;
/** Longer than minutes are kept by default. */
const everMs = 1_100 * dayMs;

type Store = Pick<HistoryStore, 'read' | 'readSeconds'>;

/** From when to when nothing was recorded around a second of which nothing was; refused where nothing was ever recorded before. */
export async function silenceAround(
  store: Store,
  site: CompiledSite,
  holders: readonly number[],
  atMs: number,
  nowMs: number,
): Promise<Result<NonNullable<PastHall['silent']>, PastFault>> {
  const before = await readTraces(store, site, holders, atMs - dayMs, atMs);
  const untilMs = Math.min(atMs + dayMs, Math.floor(nowMs / 1000) * 1000);
  const after = untilMs > atMs ? await readTraces(store, site, holders, atMs, untilMs) : [];
  const from = before.at(-1)?.toMs ?? null;
  const to = after[0]?.fromMs ?? null;
  if (from === null && !(await wasEverBefore(store, site, holders, atMs)))
    return fail({
      code: 'PAST_BEFORE_RECORDS',
      message: `Nothing was recorded here at or before that time${to === null ? '' : `; the first record is of ${timeText(to) ?? ''}`}. Choose a later time.`,
    });
  return ok({ from: from === null ? null : timeText(from), to: to === null ? null : timeText(to) });
}

/** By whole minutes that ended before, which are kept for longest. */
async function wasEverBefore(
  store: Store,
  site: CompiledSite,
  holders: readonly number[],
  atMs: number,
): Promise<boolean> {
  for (const holder of holders) {
    const found = site.holders[holder];
    if (found === undefined) continue;
    const slot = found.firstSlot;
    for (const at of [slot, ...[...found.slotOf.values()].slice(0, 4)]) {
      const column = { point: site.slots.pointId[at] ?? '', unitOfMeasure: site.slots.unitOfMeasure[at] ?? '1' };
      const toMs = Math.floor(atMs / minuteMs) * minuteMs;
      const span = { fromMs: toMs - everMs, toMs, buckets: 1 };
      if (((await store.read({ holder: found.id, ...column, ...span })).count[0] ?? 0) > 0) return true;
    }
  }
  return false;
}
