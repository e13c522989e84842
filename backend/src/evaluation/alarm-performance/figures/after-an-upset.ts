import { eemua, type FigureRow } from '../figure-row';
import { floodWindowMs } from '../flood-meter';
import { mostInTenMinutes } from './most-in-ten-minutes';

/** Within ten minutes of the first annunciation of a flood, the worst one; where no flood was, the busiest ten minutes. */
export const afterAnUpset: FigureRow = {
  id: 'afterAnUpset',
  title: 'Annunciations in the ten minutes after an upset, worst',
  unit: 'in 10 min',
  source: `${eemua} (from memory)`,
  target: () => ({ acceptable: 10, limit: 20, bound: 'below' }),
  of(told) {
    const { floods, times } = told;
    if (floods.length === 0) return mostInTenMinutes.of(told);
    const first = floods.map(
      ({ firstMs }) => times.filter((atMs) => atMs >= firstMs && atMs < firstMs + floodWindowMs).length,
    );
    return Math.max(...first);
  },
  band(value) {
    if (value < 10) return 'manageable';
    if (value < 20) return 'demanding';
    return value <= 100 ? 'hard to cope with' : 'excessive';
  },
};
