import type { AlertRecord } from './alert-record';
import { detailNow } from './detail-of';
import type { PipelineState } from './pipeline-state';

/** What an engineer's list shows, each with what is known of it now. */
export const shownAlerts = (pipeline: PipelineState): readonly AlertRecord[] =>
  [...pipeline.alerts].flatMap(([alarm, { record, shown }]) =>
    shown ? [withDetail(record, detailNow(pipeline, alarm))] : [],
  );

const withDetail = (record: AlertRecord, detail: string | null): AlertRecord =>
  detail === null ? record : { ...record, detail };
