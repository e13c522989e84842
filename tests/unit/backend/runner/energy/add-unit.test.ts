import { describe, expect, it } from 'vitest';
import { addMeasured, addWanted, type PowerSeries } from '../../../../../backend/src/runner/energy/add-unit';
import { emptyPeriod, overall, toEnergyPeriod } from '../../../../../backend/src/runner/energy/energy-sums';

const hour = 3_600_000;
const pieceMs = 600_000;

/** Mean power of each piece of ten minutes, W, and how many of its 600 values were measured. */
const series = (mean: readonly number[], count: readonly number[], uncertainty: number): PowerSeries => {
  const column = Float64Array.from(mean);
  const startMs = Float64Array.from(mean, (_, i) => i * pieceMs);
  const buckets = {
    bucketMs: pieceMs,
    startMs,
    min: column,
    mean: column,
    max: column,
    count: Float64Array.from(count),
  };
  return {
    buckets: { ...buckets, resolution: 'minute' },
    secondsPerValue: 1,
    uncertainty: () => uncertainty,
  };
};

function totalOf(heatRemoved: PowerSeries, nowMs = hour) {
  const periods = [emptyPeriod(0, hour)];
  addWanted(periods, ['heatRemoved'], nowMs);
  addMeasured(periods, { heatRemoved }, pieceMs);
  return toEnergyPeriod(overall(periods)).heatRemoved;
}

describe('energy of a unit', () => {
  // 17 of 60 minutes are missing, at 200 kW: 43 min × 60 s × 200 kW = 516 MJ, and not 720 MJ.
  it('has nothing for a gap of 17 min, and says how much was measured', () => {
    const total = totalOf(series([2e5, 2e5, NaN, 2e5, 2e5, 2e5], [600, 600, 0, 180, 600, 600], 4e3));
    expect(total).toMatchObject({ measuredSeconds: 43 * 60, wantedSeconds: 3600 });
    expect(total.energy).toBeCloseTo(516e6, 3);
    expect(total.share).toBeCloseTo(43 / 60, 12);
  });

  // What a sensor is off it is off in every second alike (r = +1: JCGM 100:2008, 5.2.2, note 1): 2 % of power are 2 % of energy.
  it('is as uncertain as the power, however long it is added up', () => {
    const total = totalOf(series(Array<number>(6).fill(2e5), Array<number>(6).fill(600), 4e3));
    expect((total.expandedUncertainty ?? NaN) / (total.energy ?? NaN)).toBeCloseTo(0.02, 12);
  });

  it('wants no more of a period than has passed', () => {
    const total = totalOf(series([2e5, NaN, NaN, NaN, NaN, NaN], [600, 0, 0, 0, 0, 0], 4e3), 600_000);
    expect(total).toMatchObject({ measuredSeconds: 600, wantedSeconds: 600, share: 1 });
  });

  it('is null where nothing was measured, never zero', () => {
    const total = totalOf(series(Array<number>(6).fill(NaN), Array<number>(6).fill(0), 4e3));
    expect(total).toMatchObject({ energy: null, expandedUncertainty: null, measuredSeconds: 0, share: 0 });
  });
});
