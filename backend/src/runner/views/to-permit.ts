import type { Permit } from '@ebbline/shared/contract/permit';
import type { PermitRecord } from '../../evaluation/pipeline/permit-record';
import type { PictureScene } from './scene';
import { timeText } from './time-text';

/** A permit in the words of the contract, as it is at `nowMs`. */
export function toPermit(record: PermitRecord, nowMs: number): Permit {
  return {
    id: record.id,
    unit: record.unit,
    branch: record.branch,
    state: record.closedMs !== null ? 'closed' : nowMs >= record.untilMs ? 'overdue' : 'open',
    openedBy: record.openedBy,
    openedAt: isoOf(record.openedMs),
    until: isoOf(record.untilMs),
    expectedInLeak: record.expectedInLeakM3PerS,
    comment: record.comment,
    waitsFor: [...record.waitsFor],
    closedBy: record.closedBy,
    closedAt: record.closedMs === null ? null : isoOf(record.closedMs),
  };
}

/** Open and overdue permits of some units, those that end first on top. */
export const permitsOf = ({ pipeline, nowMs }: PictureScene, concerns: (unit: string) => boolean): Permit[] =>
  pipeline
    .permits()
    .filter(({ unit }) => concerns(unit))
    .sort((a, b) => a.untilMs - b.untilMs)
    .map((record) => toPermit(record, nowMs()));

const isoOf = (ms: number): string => timeText(ms) ?? new Date(0).toISOString();
