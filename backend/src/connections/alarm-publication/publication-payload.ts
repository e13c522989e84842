import type { Alarm } from '@ebbline/shared/contract/alarm';
import { alarmPublicationSchema, type AlarmPublication } from '@ebbline/shared/contract/alarm-publication';
import type { AlarmNews } from '../../ports/notice';

export const publicationPayload = (site: string, { alarm, setAside, change }: AlarmNews): string =>
  JSON.stringify({ format: 1, site, alarm, setAside, change } satisfies AlarmPublication);

/** What to tell of an alarm that the broker still has and that stands no more: the same alarm, gone. Null where it is not of ours. */
export function gonePayload(site: string, held: string): { readonly alarm: string; readonly payload: string } | null {
  const before = publicationOf(held)?.alarm;
  if (before === undefined) return null;
  const { id } = before;
  const gone = { alarm: { ...before, state: 'normal' }, setAside: null, change: null } as const;
  return { alarm: id, payload: publicationPayload(site, gone) };
}

/** Site and alarm of a payload that is in our form; null where it is in none. */
export function publicationOf(held: string): { readonly site: string; readonly alarm: Alarm } | null {
  try {
    const checked = alarmPublicationSchema.safeParse(JSON.parse(held));
    return checked.success ? checked.data : null;
  } catch {
    return null; // no JSON: from someone else, or of another format
  }
}
