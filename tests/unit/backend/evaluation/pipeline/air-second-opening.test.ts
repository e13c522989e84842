import { describe, expect, it } from 'vitest';
import { atRest, Plant, plantSite, type Telemetry } from './plant';
import { seeded, withNoise } from './sensor-noise';
import { annunciations, who } from './set-aside-plant';

const ramp = (from: number, to: number, second: number, seconds: number): number =>
  from + (to - from) * Math.min(1, Math.max(0, second / seconds));

/** Server hoses cut so many seconds ago, by rack: each as in the tests of AIR-1. */
function cut(hoses: Readonly<Record<string, number>>): Telemetry {
  const t = { ...atRest(), vacuumSpeed: 0 };
  const racks = { ...t.racks };
  for (const [rack, second] of Object.entries(hoses)) {
    racks[rack] = { flow: ramp(43, 20, second, 1), p: ramp(43, 65, second, 1), power: 30 };
    t.levelSeparator += ramp(0, 0.19, second, 5);
    t.vacuumSpeed += ramp(0, 40, second, 5);
    t.pSeparator += ramp(0, 0.4, second, 5);
  }
  return { ...t, racks };
}

class Cuts {
  readonly plant = new Plant(plantSite());
  private readonly random = seeded(11);
  private readonly atSecond: Record<string, number> = {};

  constructor() {
    this.run(60);
  }

  open(rack: string): this {
    this.atSecond[rack] = this.plant.second - 1;
    return this;
  }

  run(seconds: number, change: (t: Telemetry, second: number) => Telemetry = (t) => t): this {
    this.plant.run(seconds, (second) => {
      const ages = Object.entries(this.atSecond).map(([rack, at]) => [rack, this.plant.second - at] as const);
      this.plant.telemetry['m1'] = withNoise(change(cut(Object.fromEntries(ages)), second), this.random);
    });
    return this;
  }

  acknowledged(): this {
    const acted = this.plant.pipeline.act({ kind: 'acknowledge', alarm: 'm1:AIR-1', ...who }, this.plant.nowMs);
    expect(acted).toMatchObject({ ok: true });
    return this;
  }

  get air() {
    return this.plant.standing('AIR-1');
  }
}

const firstSeen = (): Cuts => new Cuts().open('r2').run(10).acknowledged().run(600);

describe('a second line that opens in another rack while AIR-1 stands', () => {
  it('is told anew with that rack, and keeps both racks from being told as a valve', () => {
    const cuts = firstSeen();
    expect(cuts.air).toMatchObject({ state: 'acknowledged', where: 'Rack 2' });
    cuts.open('r4').run(6);
    expect(cuts.air).toMatchObject({ state: 'unacknowledged', where: 'Rack 4', priority: 2 });
    expect(cuts.air?.detail).toMatch(/^Air, Rack 4 probable; Rack 2 was told before\./);
    cuts.run(900);
    expect(annunciations(cuts.plant, 'AIR-1')).toBe(2);
    expect(cuts.plant.transitions.filter(({ entry }) => entry === 'FLOW-3')).toEqual([]);
  });

  it('is told of a third one too, and of none twice', () => {
    const cuts = firstSeen().open('r4').run(300).open('r1').run(300).open('r4').run(300);
    const told = cuts.plant.transitions.filter(({ entry, to }) => entry === 'AIR-1' && to === 'unacknowledged');
    expect(told.map(({ where }) => where)).toEqual(['Rack 2', 'Rack 4', 'Rack 1']);
  });
});

describe('AIR-1 is not told anew', () => {
  it('where the sign of one opening goes from rack to rack in its first minute', () => {
    const cuts = new Cuts().open('r2').run(10).acknowledged();
    // Gas of the cut reaches the next rack half a minute later.
    cuts.run(600, (t, second) =>
      second < 20 ? t : { ...t, racks: { ...t.racks, r3: { flow: 28, p: 55, power: 30 } } },
    );
    expect(annunciations(cuts.plant, 'AIR-1')).toBe(1);
  });

  it('where a valve of another rack is closed while the air still comes', () => {
    const cuts = firstSeen();
    cuts.run(600, (t, second) => ({
      ...t,
      levelSeparator: t.levelSeparator + ramp(0, 0.1, second, 5),
      racks: { ...t.racks, r3: { flow: ramp(43, 0, second, 3), p: ramp(43, 33, second, 3), power: 30 } },
    }));
    expect(annunciations(cuts.plant, 'AIR-1')).toBe(1);
  });

  it('by what the second opening does to the racks beside it', () => {
    const cuts = firstSeen().open('r4');
    cuts.run(600, (t, second) => ({
      ...t,
      racks: { ...t.racks, r1: { flow: ramp(43, 39, second, 8), p: ramp(43, 48, second - 8, 4), power: 30 } },
    }));
    expect(annunciations(cuts.plant, 'AIR-1')).toBe(2);
  });
});
