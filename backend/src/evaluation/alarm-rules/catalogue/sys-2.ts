import { everyShape, type SystemEntry } from '../entry';
import { Verdict } from '../verdict';

/** The journal refuses writes. This alarm then stands in memory itself, marked as not yet recorded. */
export const sys2: SystemEntry = {
  id: 'SYS-2',
  title: 'The journal is not written',
  cause: 'The disk of the data folder is full, read-only or failing, or its permissions were changed.',
  consequence:
    'Alarms go on in memory and are lost with a restart; nothing can be acknowledged, and no permit opened, until the journal takes it.',
  action: everyShape(
    'Keep Ebbline running. Free room on the disk of the data folder and see that Ebbline may write there; what waits is then recorded by itself.',
  ),
  confirm: 'Look at `/api/health`, which says how many changes wait, and at the disk of the data folder.',
  timeToRespondS: 10 * 60,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: Number.NaN, deadband: 0, onDelayMs: 2000, offDelayMs: 2000 },
  unitOfMeasure: null,
  basis: 'Proposal of this project: a write was refused, and refused again a second later.',
  judge({ journalTrouble }, _limits, _active, finding) {
    finding.verdict = journalTrouble === null ? Verdict.no : Verdict.yes;
  },
  detail: ({ unrecorded }) => `Changes that wait to be recorded: ${unrecorded}.`,
};
