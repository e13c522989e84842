import { judgeBelow } from '../below';
import { everyShape, type SystemEntry } from '../entry';
import type { SystemState } from '../system-state';
import { Verdict } from '../verdict';

const gigabyte = 1e9;

/** Room below which an engineer is told, and below which it is an alarm: a share of the disk, but never more than so much. */
const told = { share: 0.1, mostBytes: 10 * gigabyte };
const urgent = { share: 0.03, mostBytes: 2 * gigabyte };

/** The disk of the data folder fills: told as an alert, then as an alarm. */
export const sys4: SystemEntry = {
  id: 'SYS-4',
  title: 'The disk of the data folder fills up',
  cause: 'History, copies or another program take the room, or the disk is too small for the days that are kept.',
  consequence: 'Once it is full neither the journal nor history is written, and nothing can be acknowledged.',
  action: everyShape(
    'Find what takes the room on the disk of the data folder and move it away, or make the disk larger. Take nothing out of the data folder itself.',
  ),
  confirm: 'Look at `ebbline_disk_free_bytes` of `/api/metrics`, or at the disk itself.',
  timeToRespondS: 24 * 3600,
  severity: 'minor',
  worse: { severity: 'major', timeToRespondS: 3600, when: 'less than 3 % or 2 GB is left, whichever is less' },
  latching: false,
  defaults: { limit: 1, deadband: 0.2, onDelayMs: 10_000, offDelayMs: 60_000 },
  unitOfMeasure: null,
  basis:
    'Common practice, no source: told below 10 % or 10 GB, whichever is less; over again once a fifth more than that is free.',
  judge(state, { limit, deadband }, active, finding) {
    finding.verdict = judgeBelow(state.freeBytes / roomOf(state, told), limit, deadband, active);
    finding.worse = finding.verdict === Verdict.yes && state.freeBytes < roomOf(state, urgent) * limit;
  },
  detail: ({ freeBytes, diskBytes }) =>
    Number.isNaN(freeBytes)
      ? null
      : `${(freeBytes / gigabyte).toFixed(1)} GB of ${(diskBytes / gigabyte).toFixed(0)} GB are free.`,
};

const roomOf = ({ diskBytes }: SystemState, { share, mostBytes }: typeof told): number =>
  Math.min(share * diskBytes, mostBytes);
