import type { AlertRecord } from './alert-record';
import type { PipelineState } from './pipeline-state';

export function beginAlert(
  pipeline: PipelineState,
  alarm: number,
  facts: Omit<AlertRecord, 'alert' | 'entry' | 'unit' | 'hall'>,
  shown: boolean,
  nowMs: number,
): void {
  const { alarm: alert, entry, unit, hall } = pipeline.index.identity(alarm);
  pipeline.alerts.set(alarm, { record: { alert, entry, unit, hall, ...facts }, shown: false });
  showAlert(pipeline, alarm, shown, nowMs);
}

export function endAlert(pipeline: PipelineState, alarm: number, nowMs: number): void {
  if (!pipeline.alerts.has(alarm)) return;
  showAlert(pipeline, alarm, false, nowMs);
  pipeline.alerts.delete(alarm);
}

/** Puts an alert into the list or takes it out; tells the journal where that is a change. */
export function showAlert(pipeline: PipelineState, alarm: number, shown: boolean, nowMs: number): void {
  const alert = pipeline.alerts.get(alarm);
  if (alert === undefined || alert.shown === shown) return;
  pipeline.alerts.set(alarm, { ...alert, shown });
  pipeline.alertChanges.push({ what: shown ? 'came' : 'went', alert: alert.record, atMs: nowMs });
}
