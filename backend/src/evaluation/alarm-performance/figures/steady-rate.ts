import { atMost, eemua, type FigureRow } from '../figure-row';

/** Annunciations outside floods, over the time outside floods. */
export const steadyRate: FigureRow = {
  id: 'steadyRate',
  title: 'Steady rate, outside floods',
  unit: 'in 10 min',
  source: `${eemua}; the bands beyond the first from memory`,
  target: atMost(1, 2),
  of({ annunciations, floods, period: { fromMs, toMs } }) {
    const flooded = floods.map((flood) => ({ ...flood, toMs: flood.toMs ?? Number.POSITIVE_INFINITY }));
    const floodMs = flooded.reduce(
      (sum, one) => sum + Math.max(0, Math.min(toMs, one.toMs) - Math.max(fromMs, one.firstMs)),
      0,
    );
    const steadyMs = toMs - fromMs - floodMs;
    if (!(steadyMs >= 600_000)) return null;
    const steady = annunciations.filter(({ atMs }) => !flooded.some((one) => atMs >= one.firstMs && atMs < one.toMs));
    return (steady.length / steadyMs) * 600_000;
  },
  band(value) {
    if (value <= 1) return 'acceptable';
    if (value <= 2) return 'manageable';
    return value < 10 ? 'over-demanding' : 'unacceptable';
  },
};
