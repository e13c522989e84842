import type { AlarmRecord } from '../../../../../backend/src/evaluation/alarm-lifecycle/alarm-record';
import type { StoodBefore } from '../../../../../backend/src/evaluation/alarm-performance/alarm-history';
import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { StepsPage, StepsQuery, SystemEntry } from '../../../../../backend/src/ports/alarm-journal';
import { toJournalStep } from '../../../../../backend/src/runner/performance/to-journal-step';

/** Rows in order, given out four at a time, so that whoever reads them has to turn pages. */
export class JournalInMemory {
  readonly rows: JournalRow[] = [];
  rowsAPage = 4;
  refuses = false;
  beganMs = Number.NaN;
  stands: StoodBefore[] = [];
  pagesRead = 0;

  steps({ after, fromMs, toMs }: StepsQuery): StepsPage {
    this.pagesRead += 1;
    const found = this.rows.filter(
      ({ sequence, sourceTime }) =>
        sequence > after &&
        Date.parse(sourceTime) >= (fromMs ?? Number.NEGATIVE_INFINITY) &&
        Date.parse(sourceTime) < (toMs ?? Number.POSITIVE_INFINITY),
    );
    const rows = found.slice(0, this.rowsAPage);
    return {
      steps: rows.map(toJournalStep),
      next: found.length > this.rowsAPage ? (rows.at(-1)?.sequence ?? null) : null,
    };
  }

  appendSystem({ atMs, reason, cause }: SystemEntry): JournalRow {
    if (this.refuses) throw new Error('the disk is full');
    return this.add({ kind: 'system', sourceTime: iso(atMs), reason, cause: cause ?? null });
  }

  standing(): AlarmRecord[] {
    return this.stands.map((one) => ({ ...aRecord, ...one }));
  }

  /** An alarm comes, as `append` of the journal gives it back. */
  raise(alarm: string, atMs: number, more: Partial<JournalRow> = {}): JournalRow {
    const [unit = '', entry = ''] = alarm.split(':');
    const states = { from: 'normal', to: 'unacknowledged' } as const;
    return this.add({ alarm, unit, entry, hall: 'h1', sourceTime: iso(atMs), priority: 2, ...states, ...more });
  }

  private add(facts: Partial<JournalRow>): JournalRow {
    const row: JournalRow = { ...nothing, ...facts, sequence: this.rows.length + 1 };
    this.rows.push(row);
    return row;
  }
}

const iso = (ms: number): string => new Date(ms).toISOString();

const aRecord: AlarmRecord = {
  ...{ alarm: '', entry: '', unit: null, hall: null, state: 'normal', active: true, priority: 1, sinceMs: 0 },
  ...{ stateSinceMs: 0, value: null, limit: null, unitOfMeasure: null, where: null, foldedUnder: null },
  ...{ acknowledgedBy: null, acknowledgedAtMs: null },
};

const nothing: JournalRow = {
  sequence: 0,
  time: iso(0),
  sourceTime: iso(0),
  kind: 'transition',
  alarm: null,
  unit: null,
  hall: null,
  entry: null,
  from: null,
  to: null,
  priority: null,
  value: null,
  limit: null,
  unit_of_measure: null,
  where: null,
  cause: null,
  foldedUnder: null,
  actor: null,
  station: null,
  reason: null,
  previousHash: '0'.repeat(64),
  hash: '0'.repeat(64),
};
