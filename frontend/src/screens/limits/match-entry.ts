import type { ListedAlarm } from '@ebbline/shared/contract/alarm-list';
import type { ListView } from './limits-address';

const textsOf = (one: ListedAlarm): readonly string[] => [
  one.entry,
  one.title,
  one.class,
  one.classTitle ?? '',
  one.cause,
  one.consequence,
  one.confirm,
  one.owner,
  ...one.actions.map(({ text }) => text),
  ...one.settings.map(({ running }) => running.action ?? ''),
];

export const differs = (one: ListedAlarm): boolean => one.settings.some((setting) => setting.differs.length > 0);

/** Entries in which every word of the search stands somewhere, in the order of the list. */
export function matchEntries(entries: readonly ListedAlarm[], view: ListView): readonly ListedAlarm[] {
  const words = view.search
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  return entries.filter((one) => {
    if (view.differing && !differs(one)) return false;
    const all = textsOf(one).join('\n').toLowerCase();
    return words.every((word) => all.includes(word));
  });
}
