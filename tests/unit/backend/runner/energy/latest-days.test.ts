import { describe, expect, it } from 'vitest';
import type { HistoryStore } from '../../../../../backend/src/ports/history-store';
import { LatestDays } from '../../../../../backend/src/runner/energy/latest-days';
import { WatchedHistory } from '../../../../../backend/src/runner/energy/watched-history';
import { recipeOf } from '../../../../../backend/src/runner/energy/unit-powers';
import { keptSums } from '../../../../helpers/kept-sums';
import { smallSite } from '../../../../helpers/small-site';

const dayMs = 86_400_000;
const site = { ...smallSite(), timeZone: 'Etc/UTC' };

function latestDays() {
  let isReadable = true;
  const store: Pick<HistoryStore, 'read' | 'maintain'> = {
    maintain: () => Promise.resolve(),
    read({ fromMs, toMs, buckets }) {
      if (!isReadable) return Promise.reject(new Error('the disk is away'));
      const bucketMs = (toMs - fromMs) / buckets;
      const full = new Float64Array(buckets).fill(1000);
      const count = new Float64Array(buckets).fill(bucketMs / 1000);
      return Promise.resolve({
        bucketMs,
        resolution: 'minute',
        startMs: full,
        min: full,
        mean: full,
        max: full,
        count,
      });
    },
  };
  const kept = keptSums();
  const nowMs = (): number => 20.5 * dayMs;
  const watched = new WatchedHistory(store as HistoryStore, kept, nowMs);
  const days = new LatestDays({ site: () => site, store: watched, kept, nowMs, monotonicMs: () => 0 });
  const turn = async (): Promise<void> => {
    days.begin();
    await days.end();
  };
  const keptOf = (unit: number): readonly number[] => {
    const holder = site.holders[site.units[unit]?.holder ?? -1];
    if (holder === undefined) throw new Error('no such unit');
    return kept.read('day', holder.id, recipeOf(site, holder), 0, 30 * dayMs).map(({ startMs }) => startMs / dayMs);
  };
  return { watched, turn, keptOf, break: (broken: boolean) => (isReadable = !broken) };
}

describe('LatestDays', () => {
  it('keeps the days that are over of one unit after the other, and not the one that runs', async () => {
    const { watched, turn, keptOf } = latestDays();
    await turn();
    expect(keptOf(0)).toEqual([]);
    await watched.maintain(0);
    for (let unit = 0; unit < site.units.length; unit += 1) await turn();
    for (const unit of site.units.keys()) expect(keptOf(unit)).toEqual([12, 13, 14, 15, 16, 17, 18, 19]);
  });

  it('keeps with a later turn what could not be read', async () => {
    const days = latestDays();
    await days.watched.maintain(0);
    days.break(true);
    await days.turn();
    expect(days.keptOf(0)).toEqual([]);
    days.break(false);
    for (const unit of site.units.keys()) {
      await days.turn();
      expect(days.keptOf((unit + 1) % site.units.length)).not.toEqual([]);
    }
  });
});
