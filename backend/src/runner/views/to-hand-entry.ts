import type { HandEntry } from '@ebbline/shared/contract/hand-entry';
import { handPoint, waterParameters } from '@ebbline/shared/contract/water-parameters';
import type { HandRecord } from '../../evaluation/pipeline/hand-record';
import type { Pipeline } from '../../evaluation/pipeline/pipeline';

/** A typed value in the words of the contract. */
export const toHandEntry = (record: HandRecord, pipeline: Pick<Pipeline, 'handCorrector'>): HandEntry => ({
  id: record.id,
  unit: record.unit,
  parameter: record.parameter,
  point: handPoint(record.parameter),
  value: record.value,
  unit_of_measure: waterParameters[record.parameter].unit,
  typed: record.typed === null ? null : { ...record.typed, method: record.typed.method ?? null },
  takenAt: new Date(record.takenMs).toISOString(),
  enteredAt: new Date(record.enteredMs).toISOString(),
  by: record.by,
  station: record.station,
  note: record.note,
  corrects: record.corrects,
  correctedBy: pipeline.handCorrector(record.id),
});
