import type { TightnessEnd } from '@ebbline/shared/contract/tightness-test';
import type { PipelineState } from '../pipeline-state';
import { atRestart } from '../stamp-restored';
import type { TightnessRecord } from '../tightness-record';

/** Takes back what the journal holds. What ran when the program ended has a hole in it: it ends as interrupted, told with the next changes. */
export function restoreTightness({ tightness, site }: PipelineState, records: readonly TightnessRecord[]): void {
  for (const record of records) {
    if (record.endedFor !== null) {
      tightness.records.set(record.id, record);
      continue;
    }
    const there = site.units.some(({ id }) => id === record.unit);
    const test = brokenOff(record, there ? 'interrupted' : 'configuration', atRestart);
    tightness.records.set(test.id, test);
    tightness.changes.push({ what: 'ended', test, atMs: atRestart, actor: null, station: null, comment: null });
  }
}

export const brokenOff = (record: TightnessRecord, endedFor: TightnessEnd, endedMs: number): TightnessRecord => ({
  ...record,
  endedFor,
  endedBy: null,
  endedMs,
});
