import type { AlarmSpan } from '@ebbline/shared/contract/trends';
import { toZoneLocal } from '../../text/zone-time';

const minuteMs = 60_000;

/** Address of the journal with the rows of one time of an alarm, a minute more on both sides. */
export function journalOfSpan({ alarm, from, to }: AlarmSpan, zone: string) {
  const local = (iso: string, byMs: number): string =>
    toZoneLocal(new Date(Date.parse(iso) + byMs).toISOString(), zone);
  const times = {
    ...(from === null ? {} : { from: local(from, -minuteMs) }),
    ...(to === null ? {} : { to: local(to, minuteMs) }),
  };
  return { name: 'alarms-journal', query: { alarm, ...(from === null && to === null ? { last: '0' } : times) } };
}
