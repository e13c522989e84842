import type { FigureRow } from '../figure-row';

/** What came as a consequence and was told with its first-out: suppressed by design, and in no other figure. */
export const foldedConsequences: FigureRow = {
  id: 'foldedConsequences',
  title: 'Consequences told with their first-out, counted nowhere else',
  unit: 'times',
  source: 'Suppression by design, ANSI/ISA-18.2-2016',
  target: null,
  of: ({ folded, days }) => (days > 0 ? folded : null),
};
