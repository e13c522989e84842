import type { AlertRecord } from './alert-record';
import type { PipelineState } from './pipeline-state';
import { atRestart } from './stamp-restored';

/**
 * Takes back the alerts that stood: each goes on where it was, and ends only when its condition is seen to be gone. One that this
 * site no longer has goes, and that is told with the next changes. After the alarms, which go before an alert of the same name.
 */
export function restoreAlerts(pipeline: PipelineState, records: readonly AlertRecord[]): void {
  if (records.length === 0) return;
  const places = pipeline.index.byName();
  for (const record of records) {
    const place = places.get(record.alert);
    if (place === undefined || pipeline.applies[place] === 0 || pipeline.delays.active[place] === 1) {
      pipeline.alertChanges.push({ what: 'went', alert: record, atMs: atRestart });
      continue;
    }
    pipeline.alerts.set(place, { record, shown: true });
    pipeline.delays.active[place] = 1;
    pipeline.delays.trueSinceMs[place] = record.sinceMs;
  }
}
