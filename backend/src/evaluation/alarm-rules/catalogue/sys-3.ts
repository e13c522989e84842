import { everyShape, type SystemEntry } from '../entry';
import { Verdict } from '../verdict';

/** History takes no rows. */
export const sys3: SystemEntry = {
  id: 'SYS-3',
  title: 'History is not written',
  cause: 'The history server does not answer, or the disk of the data folder is full, read-only or failing.',
  consequence: 'Trends and energy sums get a gap once no more rows can wait; alarms go on.',
  action: everyShape(
    'See that the history server runs and lets Ebbline in, or free room on the disk of the data folder; what waits is then written by itself.',
  ),
  confirm: 'Look at `/api/health`, which says why rows are refused.',
  timeToRespondS: 60 * 60,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: Number.NaN, deadband: 0, onDelayMs: 30_000, offDelayMs: 10_000 },
  unitOfMeasure: null,
  basis: 'Proposal of this project: refused for longer than a server takes to start anew.',
  judge({ historyTrouble }, _limits, _active, finding) {
    finding.verdict = historyTrouble === null ? Verdict.no : Verdict.yes;
  },
  detail: ({ historyTrouble }) => historyTrouble,
};
