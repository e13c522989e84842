import { keep, recall, usable, type UnitContext } from '../judge-context';

const cell = { position: 0, sinceMs: 1 } as const;

/** A valve that has moved by more is on its way: share of the stroke. Feedback is good to ±1 % (common practice, no source). */
const movedShare = 0.03;

/** How long the facility valve has stood still, ms; 0 where it moves or is not known. Keeps where it rests in the rule's own cells. */
export function valveRestMs(context: UnitContext): number {
  const position = usable(context.state, context.slots.valvePosition);
  if (Number.isNaN(position)) return 0;
  if (Math.abs(position - recall(context, cell.position)) <= movedShare)
    return context.nowMs - recall(context, cell.sinceMs);
  keep(context, cell.position, position);
  keep(context, cell.sinceMs, context.nowMs);
  return 0;
}
