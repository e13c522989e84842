import type { AlarmState, JournalRow } from '@ebbline/shared/contract/alarm';
import { isYesNo } from '../../components/alarm-facts';
import { formatByUnit, inWords } from '../../text/format-quantity';

/** What happened, in one line. */
export function journalLine(row: JournalRow): string {
  const subject = row.entry ?? row.alarm ?? '';
  const freeAir = (row.entry ?? '').startsWith('AIR-');
  const value =
    isYesNo(row) || row.value === null ? '' : inWords(formatByUnit(row.value, row.unit_of_measure, freeAir));
  return [subject, row.where ?? '', sayChange(row.from, row.to), value].filter((part) => part !== '').join(' · ');
}

/** Said by the state it came to; a row without a state before it changed none. */
function sayChange(from: AlarmState | null, to: AlarmState | null): string {
  if (from === null || to === null) return '';
  switch (to) {
    case 'unacknowledged':
      return from === 'normal' ? 'raised' : 'raised again';
    case 'acknowledged':
      return 'acknowledged';
    case 'returnedUnacknowledged':
      return 'condition gone, not acknowledged';
    case 'latchedUnacknowledged':
      return 'condition gone, latched';
    case 'latchedAcknowledged':
      return from === 'latchedUnacknowledged' ? 'acknowledged, still latched' : 'condition gone, latched';
    case 'normal':
      return endings[from] ?? 'ended';
  }
}

const endings: { readonly [S in AlarmState]?: string } = {
  acknowledged: 'condition gone, ended',
  returnedUnacknowledged: 'acknowledged, ended',
  latchedAcknowledged: 'reset, ended',
};

/** Reasons that the program itself writes. The change says most of them already. */
const ownReasons: { readonly [reason: string]: string } = {
  conditionTrue: '',
  conditionClear: '',
  worsened: 'worse than before',
  configuration: 'the site file changed',
};
/** What stands in the place of a comment where a person left none. */
const noComment: readonly string[] = ['', 'acknowledge', 'reset'];

/** Who did it and why, where there is more to say than the change itself. What people write stands in quotes. */
export function journalActor(row: JournalRow): string | null {
  const reason = row.reason ?? '';
  if (row.actor === null) {
    const said = ownReasons[reason] ?? reason;
    return said === '' ? null : said;
  }
  return noComment.includes(reason) ? row.actor : `${row.actor}: “${reason}”`;
}
