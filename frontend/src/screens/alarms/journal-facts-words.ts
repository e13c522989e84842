import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { formatDuration } from '../../text/format-age';
import { formatMoment } from '../../text/format-time';
import { settingMembers, settingWords } from '../../text/setting-words';

type Setting = NonNullable<NonNullable<JournalRow['facts']>['setting']>;

/** Which settings were changed; what from and to, each with its unit, stands in the list of changes. */
function saySetting({ old, new: now }: Setting): string {
  const changed = settingMembers.filter((member) => old[member] !== now[member]).map((member) => settingWords[member]);
  return changed.length === 0 ? '' : `changed: ${changed.join(', ')}`;
}

/** What a row says beside its change: how it was set aside and what was known of the case; empty where nothing. */
export function sayFacts({ facts }: JournalRow, zone: string): string {
  if (facts === null || facts === undefined) return '';
  const moment = (iso: string): string => formatMoment(iso, zone);
  // Where it is brought back, these tell of what it leaves, and the row that set it aside has said them.
  const isSetAside = facts.fromMode !== undefined && facts.toMode !== undefined && facts.toMode !== 'inService';
  return [
    isSetAside && facts.minutes !== undefined ? `for ${formatDuration(facts.minutes * 60)}` : '',
    isSetAside && facts.setAsideUntil !== undefined ? `until ${moment(facts.setAsideUntil)}` : '',
    isSetAside && facts.interimMeasures !== undefined ? `meanwhile: ${facts.interimMeasures}` : '',
    facts.quality === undefined || facts.quality === 'good' ? '' : `quality ${facts.quality}`,
    facts.setting === undefined ? '' : saySetting(facts.setting),
    facts.shift === undefined
      ? ''
      : `${moment(facts.shift.from)} to ${moment(facts.shift.to)}, to ${facts.shift.takerNamed}`,
    facts.why === undefined ? '' : `why: ${facts.why}`,
    facts.of === undefined ? '' : `of entry ${facts.of}`,
    facts.detail ?? '',
  ]
    .filter((part) => part !== '')
    .join(' · ');
}
