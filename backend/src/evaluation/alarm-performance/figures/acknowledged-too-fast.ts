import type { FigureRow } from '../figure-row';

const tooFastMs = 2000;

/** Nobody reads an alarm so fast: several were acknowledged at once, or unread. */
export const acknowledgedTooFast: FigureRow = {
  id: 'acknowledgedTooFast',
  title: 'Acknowledged within 2 s of being told',
  unit: 'times',
  source: 'Own assumption: nobody has read it by then',
  target: null,
  of({ annunciations, days }) {
    if (!(days > 0)) return null;
    return annunciations.filter(
      ({ atMs, acknowledgedMs }) => acknowledgedMs !== null && acknowledgedMs - atMs < tooFastMs,
    ).length;
  },
};
