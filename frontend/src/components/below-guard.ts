import type { PressureWindow } from '@ebbline/shared/contract/live-feed';
import { isTooSmall, lowerWallFigure } from './strip-geometry';

/** True where the vacuum margin holds only as long as the water flows: no strip shows it, as it draws what is so now. */
export const isLowIfStopped = (window: PressureWindow): boolean =>
  !isTooSmall(window.vacuumMargin, window.vacuumMarginGuardPa) &&
  isTooSmall(window.vacuumMarginWorst, window.vacuumMarginGuardPa);

/** Which margin may lie below its guard though no alarm says so, yet or any more; null where none may. */
export function sayBelowGuard(window: PressureWindow): string | null {
  const isLow =
    isTooSmall(window.vacuumMargin, window.vacuumMarginGuardPa) ||
    isTooSmall(lowerWallFigure(window), window.lowerWallGuardPa);
  if (isLow) return 'a margin may lie below its guard';
  return isLowIfStopped(window) ? 'the vacuum margin may lie below its guard if the flow stops' : null;
}
