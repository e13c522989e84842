import { describe, expect, it } from 'vitest';
import { addMeasured, addWanted, type PowerSeries } from '../../../../../backend/src/runner/energy/add-unit';
import {
  emptyPeriod,
  overall,
  toEnergyPeriod,
  type PeriodSum,
} from '../../../../../backend/src/runner/energy/energy-sums';
import { recipeOf } from '../../../../../backend/src/runner/energy/unit-powers';
import { compiledOrThrow, smallSiteDocument } from '../../../../helpers/small-site';

const hour = 3_600_000;
const pieceMs = 600_000;

interface Value {
  readonly atS: number;
  readonly power: number;
}

/** Means and counts of each piece of ten minutes, as history has them of a sensor that sent these. */
function seriesOf(values: readonly Value[], hours: number, secondsPerValue: number): PowerSeries {
  const pieces = hours * 6;
  const [count, mean] = [new Float64Array(pieces), new Float64Array(pieces).fill(Number.NaN)];
  for (let piece = 0; piece < pieces; piece += 1) {
    const within = values.filter(({ atS }) => Math.floor(atS / 600) === piece);
    count[piece] = within.length;
    if (within.length > 0) mean[piece] = within.reduce((sum, { power }) => sum + power, 0) / within.length;
  }
  const startMs = Float64Array.from(mean, (_, piece) => piece * pieceMs);
  return {
    buckets: { ...{ bucketMs: pieceMs, resolution: 'minute', startMs, count }, ...{ min: mean, mean, max: mean } },
    secondsPerValue,
    uncertainty: (piece) => 0.02 * (mean[piece] ?? Number.NaN),
  };
}

/** At 10 kW, every `periodS` from `phaseS` on, each other one 2 s late. */
const steady = (periodS: number, phaseS: number, hours = 24): Value[] =>
  Array.from({ length: (hours * 3600) / periodS }, (_, i) => ({ atS: phaseS + i * periodS + (i % 2) * 2, power: 1e4 }));

function hoursOf(unitEnergy: PowerSeries, hours: number, nowMs = Infinity): readonly PeriodSum[] {
  const periods = Array.from({ length: hours }, (_, i) => emptyPeriod(i * hour, (i + 1) * hour));
  addWanted(periods, ['unitEnergy'], nowMs);
  addMeasured(periods, { unitEnergy, heatRemoved: unitEnergy }, pieceMs, nowMs);
  return periods;
}

describe('energy of a slow sensor', () => {
  it.for([
    [900, 30],
    [600, 598],
    [300, 298],
    [1800, 30],
    [5400, 30],
  ] as const)('is whole where a value comes each %d s, the first after %d s', ([periodS, phaseS]) => {
    const periods = hoursOf(seriesOf(steady(periodS, phaseS), 24, periodS), 24);
    const { unitEnergy, heatPerUnitEnergy } = toEnergyPeriod(overall(periods));
    // 240 kWh, but for the time before the first value.
    expect(unitEnergy.energy).toBeLessThanOrEqual(240 * 3.6e6 * (1 + 1e-12));
    expect(unitEnergy.energy).toBeGreaterThanOrEqual(1e4 * (86_400 - 600));
    expect(unitEnergy.measuredSeconds * 1e4).toBeCloseTo(unitEnergy.energy ?? Number.NaN, 3);
    expect((unitEnergy.expandedUncertainty ?? Number.NaN) / (unitEnergy.energy ?? Number.NaN)).toBeCloseTo(0.02, 12);
    expect(heatPerUnitEnergy).toBeCloseTo(1, 12);
  });

  // At 0:10 and 0:40 of 30 min each: 30 min at 6 kW and 30 at 12 kW, of which 20 min are of the first hour.
  it('has each value for its own period, over the edge of an hour too', () => {
    const values = [
      { atS: 600, power: 6e3 },
      { atS: 2400, power: 12e3 },
    ];
    const [first, second] = hoursOf(seriesOf(values, 2, 1800), 2);
    expect(first?.of.unitEnergy.energy).toBeCloseTo(6e3 * 1800 + 12e3 * 1200, 3);
    expect(second?.of.unitEnergy.energy).toBeCloseTo(12e3 * 600, 3);
    expect(first?.of.unitEnergy.measuredSeconds).toBe(3000);
  });

  it('has nothing in a gap beyond one period of its last value', () => {
    const values = Array.from({ length: 60 }, (_, i) => ({ atS: i * 60, power: 1e4 }));
    const [, second] = hoursOf(seriesOf(values, 2, 900), 2);
    expect(second?.of.unitEnergy.measuredSeconds).toBe(900);
  });

  it('has nothing of what has not passed yet', () => {
    const [first, second] = hoursOf(seriesOf([{ atS: 3500, power: 1e4 }], 2, 900), 2, 3_560_000);
    expect(first?.of.unitEnergy.measuredSeconds).toBe(560);
    expect(second?.of.unitEnergy.measuredSeconds).toBe(0);
  });
});

describe('sums of a slow sensor that are kept', () => {
  const recipeAt = (period: string): string => {
    const document = smallSiteDocument() as { units: Record<string, { points: Record<string, object> }> };
    const points = document.units['m2']?.points ?? {};
    points['unit.power'] = { topic: 'small/{unit}/power', unit: 'kW', period };
    const site = compiledOrThrow(document);
    const holder = site.holders.find(({ id }) => id === 'm2');
    if (holder === undefined) throw new Error('no such unit');
    return recipeOf(site, holder);
  };

  it('are made anew where they are of before, when a value stood for nothing beyond its piece; others are kept', () => {
    expect(recipeAt('15 min')).toContain('[900,["NaN","NaN","NaN","NaN"],"beyond its piece"]');
    expect(recipeAt('1 s')).toContain('[1,["NaN","NaN","NaN","NaN"]]');
  });
});
