import type { JournalFilter } from '@ebbline/shared/contract/journal-search';
import type { Priority } from '@ebbline/shared/contract/alarm';
import { fromZoneLocal } from '../../text/zone-time';
import { textOf } from './alarms-address';

export const journalKinds = ['transition', 'action', 'system'] as const;
export type JournalKind = (typeof journalKinds)[number];

/** What is looked for in the journal; its address holds all of it. */
export interface JournalView {
  readonly hall: string | null;
  readonly unit: string | null;
  readonly priority: Priority | null;
  readonly kind: JournalKind | null;
  readonly text: string;
  readonly alarm: string;
  /** Hours back from now; 0: all that there is. Holds where no time is given. */
  readonly last: number;
  /** As a field of date and time has them, in the site's zone; empty: open. */
  readonly from: string;
  readonly to: string;
}

export const lastChoices: readonly { readonly hours: number; readonly label: string }[] = [
  { hours: 1, label: 'last hour' },
  { hours: 24, label: '24 h' },
  { hours: 168, label: '7 d' },
  { hours: 720, label: '30 d' },
  { hours: 0, label: 'all' },
];
const usualHours = 24;

type Query = Readonly<Record<string, unknown>>;
const priorities: readonly Priority[] = [1, 2, 3];
const orNull = (text: string): string | null => (text === '' ? null : text);

export function readJournalAddress(query: Query): JournalView {
  const unit = orNull(textOf(query, 'unit'));
  const last = textOf(query, 'last');
  return {
    unit,
    hall: unit === null ? orNull(textOf(query, 'hall')) : null,
    priority: priorities.find((one) => String(one) === textOf(query, 'priority')) ?? null,
    kind: journalKinds.find((one) => one === textOf(query, 'kind')) ?? null,
    text: textOf(query, 'text'),
    alarm: textOf(query, 'alarm'),
    last: lastChoices.find(({ hours }) => String(hours) === last)?.hours ?? usualHours,
    from: textOf(query, 'from'),
    to: textOf(query, 'to'),
  };
}

export function writeJournalAddress(view: JournalView): Record<string, string> {
  const { unit, hall, priority, kind, text, alarm, last, from, to } = view;
  const texts = Object.entries({ text, alarm, from, to }).filter(([, value]) => value !== '');
  return {
    ...(unit !== null ? { unit } : hall !== null ? { hall } : {}),
    ...(priority === null ? {} : { priority: String(priority) }),
    ...(kind === null ? {} : { kind }),
    ...(last === usualHours || from !== '' || to !== '' ? {} : { last: String(last) }),
    ...Object.fromEntries(texts),
  };
}

/** Words that hold no letter and no digit look for nothing. */
const says = (text: string): boolean => /[\p{L}\p{N}]/u.test(text);

/** What the server is asked for. @param now ISO 8601, of the clock in force; null: not known, then all that there is */
export function journalFilter(view: JournalView, now: string | null, zone: string): JournalFilter {
  const { unit, hall, priority, kind, text, alarm, last } = view;
  const timed = view.from !== '' || view.to !== '';
  const from = timed
    ? fromZoneLocal(view.from, zone)
    : last === 0 || now === null
      ? null
      : new Date(Date.parse(now) - last * 3_600_000).toISOString();
  const to = timed ? fromZoneLocal(view.to, zone) : null;
  return {
    ...(unit !== null ? { unit } : hall !== null ? { hall } : {}),
    ...(priority === null ? {} : { priority }),
    ...(kind === null ? {} : { kind }),
    ...(says(text) ? { text } : {}),
    ...(alarm === '' ? {} : { alarm }),
    ...(from === null ? {} : { from }),
    ...(to === null ? {} : { to }),
  };
}
