import type { PastHall } from '@ebbline/shared/contract/past';
import type { HistoryStore } from '../../ports/history-store';
import { timeText } from '../views/time-text';

/** What can't be shown of a past second, whatever it was. */
const always: readonly string[] = [
  'Names, places, heights and limits are those of the site file in force now.',
  'History has whether a value was good, uncertain or bad; why, and how uncertain a derived value was, is worked out anew where it agrees.',
];

const ofTrail =
  'The trail of the hour before is worked out once a minute: a swing that was over within the minute may be missing.';
const ofMinutes =
  'The trail of the hour before is not drawn. Of that day only minutes are kept: values are means of this minute, what ran or stood is told where it was so all the minute, and alarms are those of its end. Whether a value was good or uncertain then is not kept.';

export function notesOf(
  store: Pick<HistoryStore, 'waitingFromMs'>,
  atMs: number,
  resolution: PastHall['resolution'],
): string[] {
  const all = resolution === 'minute' ? [ofMinutes, ...always] : [ofTrail, ...always];
  const waitingMs = store.waitingFromMs?.() ?? Infinity;
  if (waitingMs > atMs) return all;
  const since = timeText(waitingMs) ?? '';
  return [
    ...all,
    `Values since ${since} wait on the disk until the history server takes them: of those none are shown.`,
  ];
}
