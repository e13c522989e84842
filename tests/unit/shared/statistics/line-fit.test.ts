import { lineFit } from '@ebbline/shared/statistics/line-fit';
import { describe, expect, it } from 'vitest';

/** Calibration of a thermometer: GUM (JCGM 100:2008) H.3, table H.6. */
const readingC = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
const correctionC = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];

describe('a line by least squares', () => {
  it('has the slope and its standard deviation that GUM H.3.3 prints for a thermometer', () => {
    const fit = lineFit(readingC, correctionC, 0, readingC.length);
    expect(fit.slope).toBeCloseTo(0.00218, 5);
    expect(fit.slopeU).toBeCloseTo(0.00067, 5);
    expect(fit.degreesOfFreedom).toBe(9);
  });

  it('takes only the points between its bounds', () => {
    const fit = lineFit([0, 1, 2, 3, 9], [5, 1, 3, 5, 0], 1, 4);
    expect(fit).toMatchObject({ slope: 2, slopeU: 0, meanY: 3, degreesOfFreedom: 1 });
  });

  it('knows no scatter of two points, and no slope of one', () => {
    expect(lineFit([0, 1], [0, 1], 0, 2)).toMatchObject({ slope: 1, slopeU: Number.NaN });
    expect(lineFit([1], [1], 0, 1).slope).toBeNaN();
  });
});
