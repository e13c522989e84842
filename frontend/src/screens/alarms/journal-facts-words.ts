import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { formatDuration } from '../../text/format-age';
import { formatMoment } from '../../text/format-time';

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
    facts.detail ?? '',
  ]
    .filter((part) => part !== '')
    .join(' · ');
}
