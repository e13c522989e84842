import { atMost, isa2016, type FigureRow } from '../figure-row';
import { mostFrequent } from '../most-frequent';

export const tenMostFrequentShare: FigureRow = {
  id: 'tenMostFrequentShare',
  title: 'Share of the ten most frequent alarms in all annunciations',
  unit: '%',
  source: `${isa2016}; with a plan for each`,
  target: atMost(1, 5),
  of({ annunciations }) {
    if (annunciations.length === 0) return null;
    return mostFrequent(annunciations).reduce((sum, { share }) => sum + share, 0);
  },
};
