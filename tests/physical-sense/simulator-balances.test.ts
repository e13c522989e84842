import { describe, expect, test } from 'vitest';
import { settledState } from '../../simulator/src/plant/initial-state';
import { ratedInputs } from '../../simulator/src/plant/plant-inputs';
import type { UnitKind } from '../../simulator/src/plant/plant-parameters';
import { stepPlant } from '../../simulator/src/plant/step-plant';
import { storedGasMol, storedHeatJ, storedWaterM3 } from '../../simulator/src/plant/stored';
import { unitTypes } from '../../simulator/src/plant/unit-types';
import { waterDensityKgPerM3, waterHeatJPerKgK } from '../../simulator/src/plant/water';
import { seededRandom } from '../../simulator/src/scenario/seeded-random';

const stepS = 0.1;
const hour = 3600;

/** Random load on every rack, a new one each 20 to 200 s, and a hose open for the third quarter of an hour. */
function stormyHour(kind: UnitKind) {
  const parameters = unitTypes[kind];
  const inputs = ratedInputs(parameters);
  const state = settledState(parameters, inputs, 300);
  const source = seededRandom(7, `storm ${kind}`);
  const changeAt = inputs.loadShare.map(() => 0);
  const start = {
    heatJ: storedHeatJ(parameters, state),
    waterM3: storedWaterM3(parameters, state),
    gasMol: storedGasMol(state),
    sums: { ...state.sums },
  };
  let chipsJ = 0;
  let facilityJ = 0;
  for (let step = 0; step < hour / stepS; step += 1) {
    const nowS = step * stepS;
    for (let r = 0; r < parameters.racks; r += 1) {
      if (nowS < (changeAt[r] ?? 0)) continue;
      inputs.loadShare[r] = 0.2 + 0.9 * source.uniform();
      changeAt[r] = nowS + 20 + 180 * source.uniform();
    }
    const open = kind !== 'bench' && nowS >= hour / 2 && nowS < 0.75 * hour;
    inputs.opening[0] = open ? { boreM: parameters.boreM.outlet, checkValveStuckOpen: false } : null;
    stepPlant(parameters, state, inputs, stepS);
    // counted again from what is seen, not from the plant's own sums
    chipsJ += state.last.chipHeatW * stepS;
    const coldRiseK = state.exchangerColdC - inputs.facilitySupplyC;
    facilityJ += state.last.facilityKgPerS * waterHeatJPerKgK * coldRiseK * stepS;
  }
  const sums = Object.fromEntries(
    Object.entries(state.sums).map(([name, value]) => [name, value - start.sums[name as keyof typeof start.sums]]),
  ) as unknown as typeof state.sums;
  return { parameters, state, start, sums, chipsJ, facilityJ };
}

describe.each(['M', 'H', 'bench'] as const)('an hour of random load on %s', (kind) => {
  const { parameters, state, start, sums, chipsJ, facilityJ } = stormyHour(kind);

  test('leaves less than 0.5 % of the heat unaccounted for', () => {
    const stored = storedHeatJ(parameters, state) - start.heatJ;
    const residual = chipsJ + sums.pumpHeatJ - facilityJ - sums.hallHeatJ - sums.exhaustHeatJ - stored;
    expect(chipsJ).toBeGreaterThan(0);
    expect(Math.abs(residual) / chipsJ).toBeLessThan(0.005);
  });

  test('loses no water but the vapour in the exhaust', () => {
    const lost = start.waterM3 - storedWaterM3(parameters, state);
    expect(lost * waterDensityKgPerM3).toBeCloseTo(sums.waterOutM3 * waterDensityKgPerM3, 6);
    expect(lost).toBeGreaterThan(0);
  });

  test('keeps every mole of gas that came in and did not go out', () => {
    const more = storedGasMol(state) - start.gasMol;
    expect(more).toBeCloseTo(sums.gasInMol - sums.gasOutMol, 6);
    expect(sums.gasInMol).toBeGreaterThan(0);
  });
});
