import { describe, expect, it } from 'vitest';
import { exponentRange, fitResistanceCurve, onCurve } from '@ebbline/shared/heat/fit-resistance-curve';
import { weightedLine } from '@ebbline/shared/statistics/weighted-line';

const truth = { fixed: 0.012, convective: 0.02, exponent: 0.6 };
const at = (flow: number, more = 0, u = 1e-4) => ({ flow, resistance: onCurve(truth, flow) + more, u });

describe('a line through points that are known to different degrees', () => {
  it('is that of the calibration of a thermometer where all are alike (JCGM 100:2008, table H.6 and H.3.3)', () => {
    const readings = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
    const corrections = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
    const line = weightedLine(
      readings.map((t) => t - 20),
      corrections,
      readings.map(() => 7),
    );
    expect(line.intercept).toBeCloseTo(-0.1712, 4);
    expect(line.slope).toBeCloseTo(0.00218, 5);
  });

  it('takes a point of twice the weight as two points', () => {
    const twice = weightedLine([1, 2, 2, 4], [1, 3, 3, 4], [1, 1, 1, 1]);
    const heavy = weightedLine([1, 2, 4], [1, 3, 4], [1, 2, 1]);
    expect(heavy.slope).toBeCloseTo(twice.slope, 12);
    expect(heavy.intercept).toBeCloseTo(twice.intercept, 12);
  });

  it('tells nothing where all points stand at one place', () => {
    expect(weightedLine([2, 2], [1, 3], [1, 1]).slope).toBeNaN();
  });
});

describe('the curve of a cold plate through its points', () => {
  it('comes out as it is, with the exponent given or looked for, in any unit of flow', () => {
    for (const unit of [1, 1 / 60_000])
      for (const exponent of [0.6, null]) {
        const curve = fitResistanceCurve(
          [0.5, 1, 1.5, 2].map((flow) => ({ ...at(flow), flow: flow * unit })),
          exponent,
        );
        expect(curve?.exponent).toBeCloseTo(0.6, 6);
        expect(curve?.fixed).toBeCloseTo(0.012, 7);
        expect(onCurve(curve ?? truth, 1.2 * unit)).toBeCloseTo(onCurve(truth, 1.2), 8);
      }
  });

  it('leans to the points that are known best', () => {
    const points = (u: number) => [at(0.5), at(1), at(2, 0.004, u)];
    const rest = (u: number) => Math.abs(onCurve(fitResistanceCurve(points(u), 0.6) ?? truth, 2) - onCurve(truth, 2));
    expect(rest(1e-2)).toBeLessThan(0.05 * rest(1e-4));
  });

  it('takes a fixed part below nought for none', () => {
    const steep = [0.5, 1, 2].map((flow) => ({ flow, resistance: 0.02 * flow ** -1, u: 1e-4 }));
    const curve = fitResistanceCurve(steep, 0.6);
    expect(curve?.fixed).toBe(0);
    expect(curve?.convective).toBeGreaterThan(0.015);
  });

  it('is none where the resistance grows with flow, or all flows are one', () => {
    expect(
      fitResistanceCurve(
        [1, 2, 3].map((flow) => ({ flow, resistance: 0.01 * flow, u: 1e-4 })),
        0.6,
      ),
    ).toBeNull();
    expect(fitResistanceCurve([at(1), at(1), at(1)], 0.6)).toBeNull();
  });

  it('looks for the exponent within its range only', () => {
    const flat = [0.5, 1, 2, 4].map((flow) => ({ flow, resistance: 0.03 - 0.004 * Math.log(flow), u: 1e-4 }));
    const found = fitResistanceCurve(flat, null)?.exponent ?? 0;
    expect(found).toBeGreaterThanOrEqual(exponentRange.least);
    expect(found).toBeLessThan(exponentRange.least + 1e-6);
  });
});
