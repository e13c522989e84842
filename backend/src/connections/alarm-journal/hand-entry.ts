import { handPoint, waterParameters } from '@ebbline/shared/contract/water-parameters';
import type { HandRecord } from '../../evaluation/pipeline/hand-record';
import type { JournalEntry } from './journal-entry';
import { storedNumber, storedText } from './stored-text';
import { nothing } from './to-journal-entry';

/** Causes of the rows of typed values; the index of the journal names them. */
const causes = { entered: 'handEntered', corrected: 'handCorrected' } as const;

/** A value that a person typed, or a correction or withdrawal of one. It is of no alarm; the record is how a restart finds it again. */
export function handEntry(record: HandRecord, wallMs: number): JournalEntry {
  const { title, unit } = waterParameters[record.parameter];
  const taken = new Date(record.takenMs).toISOString();
  const said =
    record.corrects === null
      ? `${title} by hand, sample of ${taken}`
      : record.value === null
        ? `${title} by hand withdrawn, sample of ${taken}, entry ${record.corrects}`
        : `${title} by hand corrected, sample of ${taken}, in place of ${record.corrects}`;
  return {
    ...nothing,
    recordedMs: Math.round(wallMs),
    happenedMs: Math.round(record.enteredMs),
    kind: 'action',
    cause: record.corrects === null ? causes.entered : causes.corrected,
    unit: storedText(record.unit),
    value: storedNumber(record.value),
    unitOfMeasure: unit,
    place: storedText(handPoint(record.parameter)),
    sinceMs: Math.round(record.takenMs),
    actor: storedText(record.by),
    station: storedText(record.station),
    reason: storedText(`${said}${record.note === '' ? '' : `: ${record.note}`}`),
    record: storedText(JSON.stringify(record)),
  };
}
