import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { formatByUnit, inWords } from '../../text/format-quantity';
import { alarmStateWords } from '../../text/words';

/** What happened, in one line. */
export function journalLine(row: JournalRow): string {
  const subject = row.entry ?? row.alarm ?? '';
  const change =
    row.to === null ? '' : `${row.from === null ? '' : `${alarmStateWords[row.from]} → `}${alarmStateWords[row.to]}`;
  const freeAir = (row.entry ?? '').startsWith('AIR-');
  const value = row.value === null ? '' : inWords(formatByUnit(row.value, row.unit_of_measure, freeAir));
  return [subject, row.where ?? '', change, value].filter((part) => part !== '').join(' · ');
}

/** Who did it and why, where somebody did. */
export function journalActor(row: JournalRow): string | null {
  const parts = [row.actor, row.reason === null || row.reason === '' ? null : `“${row.reason}”`].filter(
    (part) => part !== null,
  );
  return parts.length === 0 ? null : parts.join(': ');
}
