import type { ListedAlarm } from '@ebbline/shared/contract/alarm-list';

/** Whether an entry has the words searched for, each of them anywhere in what is said of it. */
export function isFound(entry: ListedAlarm, search: string | undefined): boolean {
  if (search === undefined) return true;
  const { title, cause, consequence, actions, confirm, owner } = entry;
  const said = [entry.entry, title, entry.class, entry.classTitle, cause, consequence, confirm, owner];
  const own = entry.settings.map(({ running }) => running.action ?? '');
  const text = [...said, ...actions.map((action) => action.text), ...own].join('\n').toLowerCase();
  return search
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
