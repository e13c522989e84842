import type { AlarmState, JournalRow } from '@ebbline/shared/contract/alarm';
import type { AlarmMode } from '@ebbline/shared/contract/alarm-modes';
import { isYesNo, sayAlarmValue } from '../../components/alarm-facts';
import { auditWords } from '../../text/audit-words';
import { formatClock } from '../../text/format-time';
import { sayTimes } from '../../text/say-times';
import { testTitle } from './test-of-row';

/** Permits stand in the journal beside the alarms, under ids of their own. */
const isOfPermit = (row: JournalRow): boolean => row.alarm?.startsWith('permit/') === true;

/**
 * What happened, in one line.
 * @param where as people call the place; empty where the row names none
 */
export function journalLine(row: JournalRow, where = row.where ?? ''): string {
  const ofPermit = isOfPermit(row);
  const ofTest = testTitle(row);
  const subject = ofPermit ? 'permit' : (ofTest ?? row.entry ?? row.alarm ?? auditWords(row.cause) ?? '');
  const value =
    isYesNo(row) || row.value === null
      ? ''
      : sayAlarmValue(ofPermit || ofTest !== null ? 'AIR-' : (row.entry ?? ''), row.value, row.unit_of_measure);
  return [
    subject,
    where,
    causeWords[row.cause ?? ''] ?? '',
    sayModeChange(row.facts),
    sayChange(row.from, row.to) || sayPriority(row),
    value,
  ]
    .filter((part) => part !== '')
    .join(' · ');
}

/** What happened where neither state nor mode of an alarm changed. */
const causeWords: { readonly [cause: string]: string } = {
  settingChanged: 'setting changed',
  settingProposed: 'change of a setting proposed',
  settingWithdrawn: 'proposed change of a setting withdrawn',
  floodBegan: 'a flood of alarms began',
  floodEnded: 'a flood of alarms ended',
  noteWritten: 'note',
  noteCorrected: 'note corrected',
  noteWithdrawn: 'note withdrawn',
  shiftHandedOver: 'shift handed over',
  shiftTakenOver: 'shift taken over',
  programStarted: 'Ebbline started',
  programEnded: 'Ebbline ended',
};

const setAside: { readonly [M in AlarmMode]: string } = {
  inService: '',
  shelved: 'shelved',
  suppressedByDesign: 'suppressed by design',
  outOfService: 'taken out of service',
};
const broughtBack: { readonly [M in AlarmMode]: string } = {
  inService: '',
  shelved: 'no longer shelved',
  suppressedByDesign: 'no longer suppressed by design',
  outOfService: 'returned to service',
};

const meanwhile: { readonly [M in AlarmMode]: string } = {
  inService: '',
  shelved: 'while shelved',
  suppressedByDesign: 'while suppressed by design',
  outOfService: 'while out of service',
};

/** Whether it was set aside or brought back, or happened while it was; a row names the mode before only where that changed. */
function sayModeChange(facts: JournalRow['facts']): string {
  const { fromMode, toMode = 'inService' } = facts ?? {};
  if (fromMode === undefined || fromMode === toMode) return meanwhile[toMode];
  return [broughtBack[fromMode], setAside[toMode]].filter((part) => part !== '').join(', ');
}

/** What changed where neither state nor mode did: how much it matters by now. */
const sayPriority = ({ kind, from, to, cause, priority }: JournalRow): string =>
  kind === 'transition' && from === to && cause === 'conditionTrue' && priority !== null
    ? `priority ${priority} by now`
    : '';

/** Said by the state it came to; a row without a state before it changed none. */
function sayChange(from: AlarmState | null, to: AlarmState | null): string {
  if (from === null || to === null || from === to) return '';
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
  reAlarm: 'acknowledged long ago and still so',
  shelvingOver: 'its time was over',
  suppress: '',
  unsuppress: '',
};
/** What stands in the place of a comment where a person left none. */
const noComment: readonly string[] = ['', 'acknowledge', 'reset', 'shelve', 'unshelve', 'takeOut', 'returnToService'];

/** Who did it and why, where there is more to say than the change itself. What people write stands in quotes. */
export function journalActor(row: JournalRow, zone: string): string | null {
  if (isOfPermit(row)) return permitActor(row, zone);
  const reason = row.reason ?? '';
  if (isUpdate(row)) return sayFold(row, zone);
  if (row.actor === null) {
    const said = ownReasons[reason] ?? reason;
    return said === '' ? null : said;
  }
  // Of people and access the program itself writes what it was about.
  if (auditWords(row.cause) !== null) return [row.actor, reason].filter((part) => part !== '').join(': ');
  return noComment.includes(reason) ? row.actor : `${row.actor}: “${reason}”`;
}

/** As the program writes it, of a standing alarm that by now follows from another one, or from none. */
const standingUpdated = 'standing alarm updated';

const isUpdate = ({ kind, reason }: JournalRow): boolean => kind === 'system' && reason === standingUpdated;

/**
 * When what a row tells happened. The time of an update is that since which the alarm stands as it does: on the clock of
 * this machine it was found when it was written.
 */
export const rowTime = (row: JournalRow, onWallClock: boolean): string =>
  onWallClock && isUpdate(row) ? row.time : row.sourceTime;

function sayFold({ sourceTime, foldedUnder }: JournalRow, zone: string): string {
  const cause = foldedUnder ?? null;
  const now = cause === null ? 'follows from no other by now' : `follows from ${cause} by now`;
  return `stands since ${formatClock(sourceTime, zone)}, ${now}`;
}

/** Of a permit the reason says what was done, with moments as the program writes them, and after a colon the comment. */
function permitActor(row: JournalRow, zone: string): string | null {
  const [, done = '', comment = ''] = /^(.*?)(?:: (.*))?$/su.exec(row.reason ?? '') ?? [];
  const said = sayTimes(done, zone).replace(/^permit /, '');
  const parts = [said, comment === '' ? '' : `“${comment}”`, row.actor ?? 'the program'];
  return parts.filter((part) => part !== '').join(' · ');
}
