import type { GuidedChange, GuidedRecord } from './guided-record';
import { MeanSeries } from './mean-series';

/** A test that goes on: what its present step has taken so far. */
export interface GuidedRun {
  readonly record: GuidedRecord;
  /** Null while a person is asked. */
  readonly measuring: Measuring | null;
}

/** What a step that measures takes: its readings by id, and over how long their means are made. */
interface Taken {
  readonly readings: readonly { readonly reading: string }[];
  readonly blockS: number;
}

export interface Measuring {
  readonly series: MeanSeries;
  /** What it takes, in the order of the series: a plan may lack one of them later. */
  readonly readings: readonly string[];
  /** Tick time at which the step began, and at which everything was last known, ms. */
  readonly beganMs: number;
  knownMs: number;
  /** Tick time since which a gate is shut; NaN while all are open. */
  shutMs: number;
}

/** All tests that are known, by id; which of them is open at which unit; and what became of them by itself, to be taken. */
export class GuidedTests {
  readonly records = new Map<string, GuidedRecord>();
  /** By unit id: one at a time. */
  readonly open = new Map<string, GuidedRun>();
  changes: GuidedChange[] = [];

  /** Keeps a record; where it goes on, with an empty series for a step that measures. */
  put(record: GuidedRecord, nowMs: number, plan: Taken | null): void {
    this.records.set(record.id, record);
    if (record.state === 'ended') {
      if (this.open.get(record.unit)?.record.id === record.id) this.open.delete(record.unit);
      return;
    }
    const measuring: Measuring | null =
      plan === null
        ? null
        : {
            series: new MeanSeries(plan.readings.length, plan.blockS),
            readings: plan.readings.map(({ reading }) => reading),
            beganMs: nowMs,
            knownMs: nowMs,
            shutMs: Number.NaN,
          };
    this.open.set(record.unit, { record, measuring });
  }
}
