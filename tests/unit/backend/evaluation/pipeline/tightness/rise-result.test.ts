import { waterFluid } from '@ebbline/shared/fluid-properties/water-fluid';
import { describe, expect, it } from 'vitest';
import {
  freeAirOfSlope,
  riseResult,
  steadinessOf,
  verdictOf,
} from '../../../../../../backend/src/evaluation/pipeline/tightness/rise-result';
import { blockS, RiseSeries } from '../../../../../../backend/src/evaluation/pipeline/tightness/rise-series';

const accurate = { pressurePa: 0, temperatureK: 0, levelM: 0, areaM2: 0, dry: true, fluid: waterFluid };

/** Half minutes of a cubic metre at 20 °C whose gas is `gas(second)`, Pa m³/K. */
function series(blocks: number, gas: (second: number) => number): RiseSeries {
  const made = new RiseSeries();
  for (let second = 0; second <= blocks * blockS; second += 1)
    made.push({ atS: second, gas: gas(second), volumeM3: 1, temperatureK: 293.15, levelM: 0 });
  return made;
}

describe('what a rise of gas says', () => {
  it('is V·dp/dt at its temperature, and as free air at 20 °C and 101.325 kPa', () => {
    const result = riseResult(
      series(10, (second) => (20_000 + 0.5 * second) / 293.15),
      accurate,
    );
    expect(result?.throughput).toBeCloseTo(0.5, 9);
    expect(result?.freeAir).toBeCloseTo(0.5 / 101_325, 12);
    expect(result?.pressureRise).toBeCloseTo(0.5 * 9 * blockS, 6);
  });

  it('is nothing yet from five half minutes', () => {
    expect(
      riseResult(
        series(5, () => 68),
        accurate,
      ),
    ).toBeNull();
    expect(
      riseResult(
        series(6, () => 68),
        accurate,
      ),
    ).not.toBeNull();
  });

  it('leaves a mean of few seconds out', () => {
    const made = new RiseSeries();
    for (const second of [0, 1, 2, 30, 31, 60])
      made.push({ atS: second, gas: 1, volumeM3: 1, temperatureK: 293.15, levelM: 0 });
    expect(made.blocks).toBe(0);
    expect(made.samples).toBe(6);
  });

  it('takes Student’s factor where the scatter of few half minutes rules: six of them leave four degrees of freedom', () => {
    const scatter = (second: number): number => 68 + 40 * Math.sin(Math.floor(second / blockS) * 2.399);
    const result = riseResult(series(6, scatter), accurate);
    expect(result?.degreesOfFreedom).toBe(4);
    // GUM table G.2, 95.45 %, four degrees of freedom.
    expect(result?.coverageFactor).toBeCloseTo(2.87, 2);
    expect(result?.expandedUncertainty).toBeCloseTo(2.87 * (result?.standardUncertainty ?? 0), 5);
  });

  it('holds a budget whose squares add up to the whole', () => {
    const result = riseResult(
      series(12, (second) => 68 + second / 500),
      { pressurePa: 230, temperatureK: 0.14, levelM: 0.0017, areaM2: 0.25, dry: false, fluid: waterFluid },
    );
    const sum = result?.budget.reduce((all, { contribution }) => all + contribution ** 2, 0) ?? Number.NaN;
    expect(Math.sqrt(sum)).toBeCloseTo(result?.standardUncertainty ?? 0, 15);
    expect(result?.budget.every(({ contribution }) => contribution >= 0)).toBe(true);
  });
});

describe('vapour over the loop’s own fluid', () => {
  const thermometerPart = (fluid: typeof waterFluid): number =>
    riseResult(
      series(12, (second) => 68 + second / 500),
      { ...accurate, temperatureK: 0.14, dry: false, fluid },
    )?.budget.find(({ from }) => from.startsWith('return.temperature'))?.contribution ?? Number.NaN;

  it('decides what a thermometer brings that has moved', () => {
    const without = thermometerPart({ ...waterFluid, vapourPressureSlope: () => 0 });
    // Water at 20 °C: 145 Pa/K (IAPWS R7-97 equation 30 differentiated), and the gas itself 68 Pa/K.
    expect(thermometerPart(waterFluid) / without).toBeCloseTo((68 + 145) / 68, 1);
  });
});

describe('the verdict', () => {
  const result = (freeAir: number, expandedUncertainty: number) => ({
    ...(riseResult(
      series(10, () => 68),
      accurate,
    ) as NonNullable<ReturnType<typeof riseResult>>),
    freeAir,
    expandedUncertainty,
  });

  it.each([
    [0.8, 0.1, 'steady', 'passes'],
    [0.8, 0.2, 'steady', 'passes'],
    [0.8, 0.3, 'steady', 'notDecided'],
    [1.2, 0.3, 'steady', 'notDecided'],
    [1.2, 0.1, 'steady', 'fails'],
    [1.2, 0.1, 'falling', 'notDecided'],
    [1.2, 0.1, 'growing', 'fails'],
    [0.8, 0.1, 'growing', 'notDecided'],
    [0.8, 0.1, 'falling', 'passes'],
    [0.8, 0.1, 'tooEarly', 'notDecided'],
    [-0.5, 0.1, 'steady', 'notDecided'],
  ] as const)('on %d ± %d against 1, %s: %s', (value, u, steadiness, verdict) => {
    expect(verdictOf(result(value, u), steadiness, 1)).toBe(verdict);
  });

  it('waits for five half minutes on either side before it calls a rise steady', () => {
    expect(
      steadinessOf(
        series(9, (second) => second),
        1,
      ),
    ).toBe('tooEarly');
    expect(
      steadinessOf(
        series(10, (second) => second),
        1,
      ),
    ).toBe('steady');
  });

  it('calls no rise unsteady for what is small against the limit', () => {
    const bent = series(10, (second) => second ** 2 / 600);
    const grown = freeAirOfSlope(1);
    expect(steadinessOf(bent, grown * 4)).toBe('steady');
    expect(steadinessOf(bent, grown)).toBe('growing');
  });
});
