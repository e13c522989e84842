import { describe, expect, it } from 'vitest';
import { historyInMemory, type HistoryInMemory } from '../../../../helpers/history-in-memory';
import { deskOver, tried } from '../../../../helpers/trial-of-limits';
import { Plant, plantSite, startMs } from '../pipeline/plant';

const site = plantSite({
  unit: {
    volumes: { supplyTankUsable: '80 L' },
    tanks: { separatorArea: '0.25 m2', supplyArea: '0.3 m2', supplyUsualLevel: '0.5 m' },
  },
  points: {
    'pump.speed': { path: 'pumpSpeed', unit: '%' },
    'supplyTank.level': { path: 'levelTank', unit: 'm', accuracy: '±3 mm', range: '0 to 1.2 m' },
  },
});
/** 7 L/min out of a tank of 0.3 m². */
const fallMPerS = 0.007 / 0.3 / 60;
const iso = (second: number): string => new Date(startMs + second * 1000).toISOString();

class Recorded {
  readonly history: HistoryInMemory = historyInMemory(site);
  readonly plant = new Plant(site);

  constructor() {
    Object.assign(this.plant.m1, { pumpSpeed: 100 });
  }

  run(seconds: number, change: () => void = () => undefined): this {
    for (let second = 0; second < seconds; second += 1) {
      this.plant.run(1, change);
      const rows = this.plant.pipeline.drainHistory(this.plant.nowMs, false);
      if (rows !== null) this.history.write(rows);
    }
    return this;
  }

  falls(seconds: number): this {
    return this.run(seconds, () => (this.plant.m1.levelTank -= fallMPerS));
  }

  /** When TANK-1 began and ended, s. */
  get live(): readonly number[] {
    return this.plant.transitions
      .filter(({ alarm, cause, from }) => alarm === 'm1:TANK-1' && (from === 'normal' || cause === 'conditionClear'))
      .map(({ atMs }) => (atMs - startMs) / 1000);
  }

  async stored(): Promise<readonly number[]> {
    const to = iso(this.plant.second);
    const request = { entry: 'TANK-1', units: ['m1'], from: iso(0), to, proposed: { limit: 1700 } };
    const trial = await tried(deskOver(site, this.history), request);
    expect(trial.method).toBe('stored');
    return (trial.live?.episodes ?? []).flatMap(({ from, to: end }) =>
      [from, end].flatMap((time) => (time === null ? [] : [(Date.parse(time) - startMs) / 1000])),
    );
  }
}

describe('a trial on stored points of an alarm that ends where nothing surely moves', () => {
  it('ends when it ended live: the tank stands, and no time is left to be worked out', async () => {
    const recorded = new Recorded().run(200).falls(300).run(1800);
    expect(recorded.live).toHaveLength(2);
    const stored = await recorded.stored();
    expect(stored).toHaveLength(2);
    stored.forEach((second, i) => expect(Math.abs(second - (recorded.live[i] ?? Number.NaN))).toBeLessThanOrEqual(1.1));
  });

  it('ends by nothing while the level that it is worked out from is bad', async () => {
    const recorded = new Recorded().run(200).falls(200);
    recorded.plant.m1.levelTank = 9;
    recorded.run(600);
    expect(recorded.live).toHaveLength(1);
    expect(await recorded.stored()).toHaveLength(1);
  });
});
