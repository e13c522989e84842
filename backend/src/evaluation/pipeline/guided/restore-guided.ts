import type { PipelineState } from '../pipeline-state';
import { atRestart } from '../stamp-restored';
import type { GuidedRecord } from './guided-record';
import { brokenOff } from './move-on';

/** Takes back what the journal holds. What was open when the program ended has a hole in it: it ends as interrupted, told with the next changes. */
export function restoreGuided({ guided, site }: PipelineState, records: readonly GuidedRecord[]): void {
  for (const record of records) {
    if (record.state === 'ended') {
      guided.records.set(record.id, record);
      continue;
    }
    const there = site.units.some(({ id }) => id === record.unit);
    const test = brokenOff(record, there ? 'interrupted' : 'configuration', null, null, atRestart);
    guided.records.set(test.id, test);
    guided.changes.push({ what: 'ended', test, atMs: atRestart, actor: null, station: null, comment: null });
  }
}
