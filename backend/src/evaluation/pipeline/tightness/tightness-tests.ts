import type { TightnessChange, TightnessRecord } from '../tightness-record';
import { RiseSeries } from './rise-series';

/** A test that goes on: what it has taken so far. */
export interface TightnessRun {
  readonly record: TightnessRecord;
  readonly series: RiseSeries;
  /** Source time of the newest pressure that was taken, ms. */
  takenMs: number;
  /** Tick time at which everything was last known, ms. */
  knownMs: number;
}

/** All tests that are known, by id; which of them runs at which unit; and what became of them by itself, to be taken. */
export class TightnessTests {
  readonly records = new Map<string, TightnessRecord>();
  /** By unit id: one at a time. */
  readonly running = new Map<string, TightnessRun>();
  changes: TightnessChange[] = [];

  begin(record: TightnessRecord, nowMs: number): void {
    this.records.set(record.id, record);
    this.running.set(record.unit, { record, series: new RiseSeries(), takenMs: Number.NaN, knownMs: nowMs });
  }

  end(record: TightnessRecord): void {
    this.records.set(record.id, record);
    this.running.delete(record.unit);
  }
}
