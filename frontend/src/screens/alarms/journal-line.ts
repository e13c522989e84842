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

/** Reasons that the program itself writes; what people write stands in quotes. */
const ownReasons: { readonly [reason: string]: string } = {
  conditionTrue: '',
  conditionClear: 'condition gone',
  worsened: 'condition worse',
  acknowledge: '',
  reset: 'reset',
  configuration: 'the site file changed',
};

/** Who did it and why, where there is more to say than the change itself. */
export function journalActor(row: JournalRow): string | null {
  const reason = row.reason ?? '';
  const quoted = reason === '' || row.actor === null ? reason : `“${reason}”`;
  const parts = [row.actor ?? '', ownReasons[reason] ?? quoted].filter((part) => part !== '');
  return parts.length === 0 ? null : parts.join(': ');
}
