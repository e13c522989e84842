import type { Mode } from '@ebbline/shared/contract/http-api';
import { clockDay } from './details/clock-time';
import type { UnitContext } from './judge-context';

/** Modes in which a loop stands and air has been let in. */
const vented: readonly Mode[] = ['off', 'vented', 'draining'];

/**
 * The loop is stopped and vented on purpose, under an open permit for the whole of it: then that it is not protected is told as
 * an alert, in place of an alarm. Only where the unit tells its mode itself: a loop that stands by its feedback may have tripped.
 * Not while it is filled, not under a permit for a branch, and not under one whose own time is over.
 */
export const ventedUnderPermit = ({ mode, modeTold, nowMs, permits, unitIndex }: UnitContext): boolean =>
  modeTold && nowMs < (permits.wholeLoopDueMs[unitIndex] as number) && vented.includes(mode);

/** Null where it is not so. */
export function ventedText(context: UnitContext): string | null {
  if (!ventedUnderPermit(context)) return null;
  const { nowMs, permits, site, unitIndex } = context;
  const until = clockDay(permits.wholeLoopDueMs[unitIndex] as number, nowMs, site.timeZone);
  return `Vented, not protected: low points stand above ambient. A permit is open until ${until}.`;
}
