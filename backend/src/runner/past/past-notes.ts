import type { HistoryStore } from '../../ports/history-store';
import { timeText } from '../views/time-text';

/** What can't be shown of a past second, whatever it was. */
const always: readonly string[] = [
  'Names, places, heights and limits are those of the site file in force now.',
  'The trail of the hour before is not drawn.',
  'History has whether a value was good, uncertain or bad; why, and how uncertain a derived value was, is worked out anew where it agrees.',
];

export function notesOf(store: Pick<HistoryStore, 'waitingFromMs'>, atMs: number): string[] {
  const waitingMs = store.waitingFromMs?.() ?? Infinity;
  if (waitingMs > atMs) return [...always];
  const since = timeText(waitingMs) ?? '';
  return [
    ...always,
    `Values since ${since} wait on the disk until the history server takes them: of those none are shown.`,
  ];
}
