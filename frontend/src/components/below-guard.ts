import type { PressureWindow } from '@ebbline/shared/contract/live-feed';
import { isTooSmall, lowerWallFigure } from './strip-geometry';

/** True where any margin of the loop may lie below its guard: to the room, the same if the flow stopped, or to the lower wall. */
export const isBelowGuard = (window: PressureWindow): boolean =>
  isTooSmall(window.vacuumMargin, window.vacuumMarginGuardPa) ||
  isTooSmall(window.vacuumMarginWorst, window.vacuumMarginGuardPa) ||
  isTooSmall(lowerWallFigure(window), window.lowerWallGuardPa);

/** True where the vacuum margin holds only as long as the water flows: no strip shows it, as it draws what is so now. */
export const isLowIfStopped = (window: PressureWindow): boolean =>
  !isTooSmall(window.vacuumMargin, window.vacuumMarginGuardPa) &&
  isTooSmall(window.vacuumMarginWorst, window.vacuumMarginGuardPa);

/** The same in words. */
export const lowIfStoppedWords = 'margin below its guard if the flow stops';
