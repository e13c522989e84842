import { describe, expect, it } from 'vitest';
import { Plant, plantSite } from '../plant';
import { begin, confirmUntilMeasured, newest } from './guided-plant';

const site = plantSite({
  modePoint: true,
  unit: {
    plates: {
      p1: { name: 'Chip 1', branch: 'r1', elevation: '1.3 m' },
      p2: { name: 'Chip 2', branch: 'r2', elevation: '1.3 m' },
    },
  },
  points: { 'plate.*.temperature': { path: 'chips.{plate}', unit: '°C', accuracy: '±1 °C' } },
});
const minutes = { minutes: 10 } as const;

function loaded(): Plant {
  const plant = new Plant(site);
  Object.assign(plant.m1, { chips: { p1: 60, p2: 64 } });
  return plant.run(70);
}
const heat = (plant: Plant, second: number, peak: number): void => {
  Object.assign(plant.m1, { chips: { p1: 60, p2: second === 100 ? peak : 64 } });
};
const figure = (plant: Plant, title: RegExp) => newest(plant).result?.figures.find((one) => title.test(one.title));

describe('the load test', () => {
  it('tells the peak of a single second and where the hottest plate settled, each with its interval', () => {
    const plant = loaded();
    expect(begin(plant, 'loadTest', minutes)).toMatchObject({ ok: true });
    confirmUntilMeasured(plant);
    plant.run(670, (second) => heat(plant, second, 71));
    expect(newest(plant)).toMatchObject({ endedFor: 'completed', verdict: 'passes' });
    expect(figure(plant, /^Peak/)?.value).toBe(71);
    expect(figure(plant, /settled/)?.value).toBeCloseTo(64, 0);
    const each = newest(plant)
      .steps.at(-1)
      ?.measured?.readings.filter(({ title }) => title.startsWith('Chip'));
    expect(each).toMatchObject([
      { title: 'Chip 1', most: 60 },
      { title: 'Chip 2', most: 71 },
    ]);
    expect(newest(plant).result?.notes).toEqual([
      'Hottest at its peak: Chip 2 at 71.0 °C; once settled: Chip 2 at 64.0 °C.',
    ]);
    // ±1 °C, rectangular: 2 · 1/√3.
    expect(figure(plant, /^Peak/)?.expandedUncertainty).toBeCloseTo(2 / Math.sqrt(3), 3);
  });

  it('fails by its peak alone, and decides nothing where the interval of the peak holds the limit', () => {
    const [failing, undecided] = [loaded(), loaded()];
    for (const [plant, peak] of [
      [failing, 90],
      [undecided, 80.5],
    ] as const) {
      begin(plant, 'loadTest', minutes);
      confirmUntilMeasured(plant);
      plant.run(670, (second) => heat(plant, second, peak));
    }
    expect(newest(failing).verdict).toBe('fails');
    expect(figure(failing, /settled/)?.verdict).toBe('passes');
    expect(newest(undecided).verdict).toBe('notDecided');
  });

  it('goes on over its time until the plates have settled, and is broken off where the load falls', () => {
    const plant = loaded();
    begin(plant, 'loadTest', minutes);
    confirmUntilMeasured(plant);
    plant.run(700, (second) => Object.assign(plant.m1, { chips: { p1: 60, p2: 64 + second * 0.01 } }));
    expect(newest(plant).state).toBe('measure');
    plant.m1.tReturn = 38;
    plant.run(20);
    expect(newest(plant)).toMatchObject({ endedFor: 'gateLost', verdict: null });
    expect(newest(plant).endedSaid).toContain('below the 192.0 kW');
    // What was measured until then stays: the hottest that it came to.
    const { measured, doneMs } = newest(plant).steps.at(-1) ?? {};
    expect(doneMs).toBeNull();
    expect(measured?.samples).toBeGreaterThan(690);
    expect(measured?.readings.find(({ reading }) => reading === 'plates')?.most).toBeCloseTo(71, 0);
  });

  it('is refused below its load and where no plate is measured', () => {
    const idle = loaded();
    idle.m1.tReturn = 38;
    expect(idle.run(70).pipeline.guidedRefusals(0, 'loadTest')).toMatchObject([{ code: 'GUIDED_LOAD' }]);
    const bare = new Plant(plantSite({ modePoint: true })).run(10);
    expect(bare.pipeline.guidedRefusals(0, 'loadTest')).toMatchObject([{ code: 'GUIDED_NO_POINT' }]);
  });
});
