import type { HallFrame } from '@ebbline/shared/contract/live-feed';
import type { Priority } from '@ebbline/shared/contract/alarm';
import { priorityWords } from '../../text/words';

/** What calls at units of other halls, by its urgency; empty where nothing does. Alarms of no single unit are told by every hall. */
export function sayElsewhere(frame: Pick<HallFrame, 'loops' | 'calling'>): string {
  const own = new Set(frame.loops.map(({ unit }) => unit));
  const others = (frame.calling?.newest ?? []).filter(({ unit }) => unit !== null && !own.has(unit));
  if (others.length === 0) return '';
  const counts = ([1, 2, 3] as const satisfies readonly Priority[]).flatMap((priority) => {
    const count = others.filter((one) => one.priority === priority).length;
    return count === 0 ? [] : [`${count} × ${priorityWords[priority]}`];
  });
  return `In other halls not acknowledged: ${counts.join(', ')}.`;
}
