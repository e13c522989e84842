import { judgeAbove } from '../above';
import { everyShape, type SystemEntry } from '../entry';

/** Slices are judged late: what happens in the plant is told late. Limits in seconds. */
export const sys1: SystemEntry = {
  id: 'SYS-1',
  title: 'Evaluation is late',
  cause:
    'The machine has too little processor time for this many points: another program runs on it, it was suspended, or the site has grown.',
  consequence: 'Every other alarm comes as late as this; beyond ten seconds, seconds of the plant are left out.',
  action: everyShape(
    'Watch the units on their own panels until this has gone; then see what else runs on the machine and give Ebbline its processor time back.',
  ),
  confirm: 'Look at `ebbline_evaluation_lag_seconds` of `/api/metrics`, and at the processor load of the machine.',
  timeToRespondS: 5 * 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 2, deadband: 1, onDelayMs: 30_000, offDelayMs: 10_000 },
  unitOfMeasure: null,
  basis:
    'Proposal of this project: as late as the shortest on-delay of an alarm about water or air, for longer than a hiccup.',
  judge({ evaluationLagS }, { limit, deadband }, active, finding) {
    finding.verdict = judgeAbove(evaluationLagS, limit, deadband, active);
  },
  detail: ({ evaluationLagS }) => `Judged ${evaluationLagS.toFixed(1)} s late.`,
};
