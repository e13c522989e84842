import { keep, recall, usable, type UnitContext } from '../judge-context';
import { Verdict } from '../verdict';

const cell = { place: 0 } as const;

/**
 * The nearest lower wall is sought among the plates whose power is known: one whose power is bad drops out, and another wall, further
 * off, takes its place. So where the wall that raised the alarm is a plate's, and that plate can't be seen now, nothing says that it
 * is over. After a restart, when it is not known which wall it was, any plate that can't be seen counts.
 */
export function holdUnseenPlate(context: UnitContext, active: boolean, verdict: Verdict): Verdict {
  const { slots, state, unit } = context;
  if (verdict === Verdict.yes) keep(context, cell.place, state.where[slots.lowerWallMargin] ?? -1);
  if (verdict !== Verdict.no || !active || unit.design.plateWallResistanceKPerW === null) return verdict;
  const place = recall(context, cell.place);
  const unseen = unit.plates.some(
    (plate) =>
      plate.slot.power >= 0 &&
      Number.isNaN(usable(state, plate.slot.power)) &&
      (Number.isNaN(place) || place === plate.place),
  );
  return unseen ? Verdict.hold : verdict;
}
