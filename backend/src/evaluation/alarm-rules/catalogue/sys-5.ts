import { judgeAbove } from '../above';
import { everyShape, type SystemEntry } from '../entry';

/** The program's own thread comes late to all its work. Limits in seconds. */
export const sys5: SystemEntry = {
  id: 'SYS-5',
  title: 'The program answers late',
  cause: 'Something holds up the program’s own thread: too little processor time, or far more messages than usual.',
  consequence: 'Screens show what was, and what a person does is confirmed late; evaluation is the next to be late.',
  action: everyShape(
    'See what else runs on the machine, and at the intake counts whether a sender floods the broker; end that first.',
  ),
  confirm: 'Look at `ebbline_event_loop_delay_seconds` of `/api/metrics`.',
  timeToRespondS: 15 * 60,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: 1, deadband: 0.5, onDelayMs: 30_000, offDelayMs: 10_000 },
  unitOfMeasure: null,
  basis: 'Proposal of this project: as long as screens take an answer for timely, for longer than a hiccup.',
  judge({ threadDelayS }, { limit, deadband }, active, finding) {
    finding.verdict = judgeAbove(threadDelayS, limit, deadband, active);
  },
  detail: ({ threadDelayS }) => `Comes to its work ${threadDelayS.toFixed(1)} s late.`,
};
