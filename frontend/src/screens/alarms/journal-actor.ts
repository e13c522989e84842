import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { auditWords } from '../../text/audit-words';
import { formatClock } from '../../text/format-time';
import { sayTimes } from '../../text/say-times';
import { isOfPermit } from './is-of-permit';

/** Reasons that the program itself writes. The change says most of them already. */
const ownReasons: { readonly [reason: string]: string } = {
  conditionTrue: '',
  conditionClear: '',
  worsened: 'worse than before, or at a further place',
  configuration: 'the site file changed',
  reAlarm: 'acknowledged long ago and still so',
  shelvingOver: 'its time was over',
  suppress: '',
  unsuppress: '',
};
/** What stands in the place of a comment where a person left none. */
const noComment: readonly string[] = ['', 'acknowledge', 'reset', 'shelve', 'unshelve', 'takeOut', 'returnToService'];

/**
 * Who did it and why, where there is more to say than the change itself. What people write stands in quotes.
 * @param sayAlarm what an alarm is called, by its id
 */
export function journalActor(row: JournalRow, zone: string, sayAlarm = (id: string) => id): string | null {
  if (isOfPermit(row)) return permitActor(row, zone);
  const reason = row.reason ?? '';
  if (isUpdate(row)) return sayFold(row, zone, sayAlarm);
  if (row.actor === null) {
    const said = [ownReasons[reason] ?? reason, sayCause(row, sayAlarm)].filter((part) => part !== '');
    return said.length === 0 ? null : said.join(' · ');
  }
  // Of people and access the program itself writes what it was about.
  if (auditWords(row.cause) !== null) return [row.actor, reason].filter((part) => part !== '').join(': ');
  return noComment.includes(reason) ? row.actor : `${row.actor}: “${reason}”`;
}

/** Said once, where it was told. */
const sayCause = ({ to, foldedUnder }: JournalRow, sayAlarm: (id: string) => string): string =>
  to === 'unacknowledged' && typeof foldedUnder === 'string' ? `follows from ${sayAlarm(foldedUnder)}` : '';

/** As the program writes it, of a standing alarm that by now follows from another one, or from none. */
const standingUpdated = 'standing alarm updated';

const isUpdate = ({ kind, reason }: JournalRow): boolean => kind === 'system' && reason === standingUpdated;

/**
 * When what a row tells happened. The time of an update is that since which the alarm stands as it does: on the clock of
 * this machine it was found when it was written.
 */
export const rowTime = (row: JournalRow, onWallClock: boolean): string =>
  onWallClock && isUpdate(row) ? row.time : row.sourceTime;

function sayFold({ sourceTime, foldedUnder }: JournalRow, zone: string, sayAlarm: (id: string) => string): string {
  const cause = foldedUnder ?? null;
  const now = cause === null ? 'follows from no other by now' : `follows from ${sayAlarm(cause)} by now`;
  return `stands since ${formatClock(sourceTime, zone)}, ${now}`;
}

/** Of a permit the reason says what was done, with moments as the program writes them, and after a colon the comment. */
function permitActor(row: JournalRow, zone: string): string | null {
  const [, done = '', comment = ''] = /^(.*?)(?:: (.*))?$/su.exec(row.reason ?? '') ?? [];
  const said = sayTimes(done, zone).replace(/^permit /, '');
  const parts = [said, comment === '' ? '' : `“${comment}”`, row.actor ?? 'the program'];
  return parts.filter((part) => part !== '').join(' · ');
}
