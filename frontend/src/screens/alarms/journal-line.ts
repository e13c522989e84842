import type { AlarmState, JournalRow } from '@ebbline/shared/contract/alarm';
import type { AlarmMode } from '@ebbline/shared/contract/alarm-modes';
import { isYesNo, sayAlarmValue } from '../../components/alarm-facts';
import { auditWords } from '../../text/audit-words';
import { isOfPermit } from './is-of-permit';
import { testTitle } from './test-of-row';

/**
 * What happened, in one line.
 * @param where as people call the place; empty where the row names none
 * @param entry the entry of the catalogue with its title; empty where the row names none
 */
export function journalLine(row: JournalRow, where = row.where ?? '', entry = row.entry ?? ''): string {
  const ofPermit = isOfPermit(row);
  const ofTest = testTitle(row);
  const subject = ofPermit ? 'permit' : (ofTest ?? [entry, row.alarm].find(isSaid) ?? auditWords(row.cause) ?? '');
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

const isSaid = (text: string | null): text is string => text !== null && text !== '';

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

/** What changed where neither state nor mode did: how much it matters by now, or the place, which the row names. */
const sayPriority = ({ kind, from, to, cause, priority }: JournalRow): string =>
  kind === 'transition' && from === to && cause === 'conditionTrue' && priority !== null
    ? `told again, priority ${priority} by now`
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
