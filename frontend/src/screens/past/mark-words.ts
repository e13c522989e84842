import type { MarkKind, PastMark } from '@ebbline/shared/contract/past';
import { priorityWords } from '../../text/words';

const kindWords: { readonly [K in MarkKind]: string } = {
  raised: 'alarm',
  gone: 'condition gone',
  floodBegan: 'flood of alarms began',
  floodEnded: 'flood of alarms is over',
  permitOpened: 'permit opened',
  permitClosed: 'permit closed',
  programStarted: 'Ebbline started',
  programEnded: 'Ebbline ended',
};

/** What a mark stands for, in words: `act now: Air is being drawn in, first of several`. */
export function sayMark({ kind, title, priority, firstOut, foldedUnder }: PastMark): string {
  if (kind === 'raised') {
    const urgent = priority === null ? '' : `${priorityWords[priority]}: `;
    return `${urgent}${title}${firstOut ? ', others followed from it' : foldedUnder === null ? '' : ', followed from another'}`;
  }
  if (kind === 'gone') return `${kindWords.gone}: ${title}`;
  return kindWords[kind];
}

/** What one goes from and to by the keys of an alarm: what was told by itself. */
export const isStop = ({ kind, foldedUnder }: PastMark): boolean => kind === 'raised' && foldedUnder === null;

/** The alarm before or behind a second; null where the marks have none. */
export function neighbour(marks: readonly PastMark[], at: string, way: -1 | 1): PastMark | null {
  const atMs = Date.parse(at);
  const stops = marks.filter(isStop);
  const second = ({ time }: PastMark): number => Math.floor(Date.parse(time) / 1000) * 1000;
  return way === 1
    ? (stops.find((mark) => second(mark) > atMs) ?? null)
    : ([...stops].reverse().find((mark) => second(mark) < atMs) ?? null);
}
