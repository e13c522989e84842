import { below, isa2016, type FigureRow } from '../figure-row';
import { countsPerSpan } from '../trailing-window';

/** Periods of ten minutes are counted from the start of the period; a last short one counts as one. */
export const tenMinutesOverTen: FigureRow = {
  id: 'tenMinutesOverTen',
  title: 'Periods of ten minutes with more than 10 annunciations',
  unit: '%',
  source: isa2016,
  target: below(1),
  of({ times, period: { fromMs, toMs } }) {
    const counts = countsPerSpan(times, 600_000, fromMs, toMs);
    return counts.length === 0 ? null : (100 * counts.filter((count) => count > 10).length) / counts.length;
  },
};
