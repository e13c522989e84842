import type { Alert } from '@ebbline/shared/contract/alert';
import { alertTexts } from '../../evaluation/pipeline/alarm-texts';
import type { AlertRecord } from '../../evaluation/pipeline/alert-record';
import type { PictureScene } from './scene';
import { timeText } from './time-text';

/** Alerts of some units in the words of the contract, the oldest first. */
export const alertsOf = (scene: PictureScene, concerns: (unit: string | null) => boolean): Alert[] =>
  scene.pipeline
    .alerts()
    .filter(({ unit }) => concerns(unit))
    .sort((a, b) => a.sinceMs - b.sinceMs)
    .map((record) => toAlert(scene, record));

function toAlert({ pipeline }: PictureScene, record: AlertRecord): Alert {
  return {
    id: record.alert,
    unit: record.unit,
    hall: record.hall,
    entry: record.entry,
    since: timeText(record.sinceMs) ?? new Date(0).toISOString(),
    value: record.value,
    limit: record.limit,
    unit_of_measure: record.unitOfMeasure,
    where: record.where,
    detail: record.detail ?? null,
    ...alertTexts(pipeline.site, record),
  };
}
