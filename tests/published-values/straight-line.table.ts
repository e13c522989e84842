import { lineUncertainty, straightLine } from '@ebbline/shared/uncertainty/straight-line';
import { absolute, type PublishedTable } from './published-table';

const source =
  'JCGM 100:2008 (GUM) H.3, table H.6 and H.3.3, H.3.4; readings from memory, all printed results reproduced';

const reference = 20;
const readings = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
const corrections = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
const fit = () =>
  straightLine(
    readings.map((t) => t - reference),
    corrections,
  );
const values = (): readonly number[] => {
  const line = fit();
  const { intercept, slope, interceptU, slopeU, correlation, scatter } = line;
  return [
    intercept,
    interceptU,
    slope,
    slopeU,
    correlation,
    scatter,
    intercept + 10 * slope,
    lineUncertainty(line, 10),
  ];
};

export const straightLineTable: PublishedTable = {
  title: 'line through the calibration of a thermometer, and its correction at 30 °C',
  subject: { equation: straightLine as unknown as (...inputs: never[]) => number },
  evaluate: (_, { which = 0 }) => values()[which] ?? Number.NaN,
  rows: (
    [
      ['y1', -0.1712, 1e-4],
      ['s(y1)', 0.0029, 1e-4],
      ['y2', 0.00218, 1e-5],
      ['s(y2)', 0.00067, 1e-5],
      ['r', -0.93, 1e-3],
      ['s', 0.0035, 5e-5],
      ['b(30)', -0.1494, 1e-4],
      ['u(b(30))', 0.0041, 1e-4],
    ] as const
  ).map(([name, expected, tolerance], which) => ({
    id: `gum-h3 ${name}`,
    status: 'published' as const,
    source,
    inputs: { which },
    expected,
    tolerance: absolute(tolerance),
  })),
};
