import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { formatDuration } from '../../text/format-age';
import { formatMoment } from '../../text/format-time';

/** What a row says beside its change: how it was set aside and what was known of the case; empty where nothing. */
export function sayFacts({ facts }: JournalRow, zone: string): string {
  if (facts === null || facts === undefined) return '';
  const moment = (iso: string | undefined): string => (iso === undefined ? '' : formatMoment(iso, zone));
  return [
    facts.minutes === undefined ? '' : `for ${formatDuration(facts.minutes * 60)}`,
    facts.setAsideUntil === undefined ? '' : `until ${moment(facts.setAsideUntil)}`,
    facts.interimMeasures === undefined ? '' : `meanwhile: ${facts.interimMeasures}`,
    facts.quality === undefined || facts.quality === 'good' ? '' : `quality ${facts.quality}`,
    facts.detail ?? '',
  ]
    .filter((part) => part !== '')
    .join(' · ');
}
