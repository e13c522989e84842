import { describe, expect, it } from 'vitest';
import { buildSite } from '../../../../helpers/compiled-site-builder';
import { historyInMemory } from '../../../../helpers/history-in-memory';
import { deskOver, tried } from '../../../../helpers/trial-of-limits';

const fromMs = Date.UTC(2031, 4, 6);
const { site } = buildSite();
const iso = (second: number): string => new Date(fromMs + second * 1000).toISOString();

/** Everything that is measured, for an hour. */
function measured() {
  const history = historyInMemory(site);
  for (const [slot, point] of site.slots.pointId.entries()) {
    if (site.slots.measured[slot] !== 1) continue;
    const holder = site.holders[site.slots.holder[slot] ?? -1]?.id ?? '';
    const value = point.includes('emperature') ? 30 : point.includes('ressure') ? 60_000 : 0.01;
    for (let second = 0; second < 3600; second += 1) history.put(holder, point, fromMs + second * 1000, value);
  }
  return history;
}
const hour = { entry: 'AIR-1', units: ['m1'], from: iso(0), to: iso(3600), proposed: { onDelaySeconds: 3 } } as const;

describe('a trial that works everything out anew', () => {
  const history = measured();

  it('judges every second where seconds are kept', async () => {
    history.minutesBeforeMs = Number.NEGATIVE_INFINITY;
    const trial = await tried(deskOver(site, history), { ...hour, units: [...hour.units] });
    expect(trial).toMatchObject({ method: 'recomputed', secondsJudged: 3600, secondsMissing: 0 });
  });

  it('leaves out what is kept as minutes alone, as its note says, and counts it as missing', async () => {
    history.minutesBeforeMs = fromMs + 1_800_000;
    const trial = await tried(deskOver(site, history), { ...hour, units: [...hour.units] });
    expect(trial.notes.join(' ')).toMatch(/only minutes are kept.*left out/);
    expect(trial).toMatchObject({ secondsJudged: 1800, secondsMissing: 1800 });
  });
});
