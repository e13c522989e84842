import { below, isa2016, type FigureRow } from '../figure-row';
import { countsPerSpan } from '../trailing-window';

/** Hours are counted from the start of the period; a last short one counts as one. */
export const hoursOverThirty: FigureRow = {
  id: 'hoursOverThirty',
  title: 'Hours with more than 30 annunciations',
  unit: '%',
  source: isa2016,
  target: below(1),
  of({ times, period: { fromMs, toMs } }) {
    const counts = countsPerSpan(times, 3_600_000, fromMs, toMs);
    return counts.length === 0 ? null : (100 * counts.filter((count) => count > 30).length) / counts.length;
  },
};
