import type { PressureWindow } from '@ebbline/shared/contract/live-feed';
import { formatQuantity, inWords } from '../text/format-quantity';
import { lowerWallNouns } from '../text/words';
import { lowerWallFigure } from './strip-geometry';

const absolute = (pa: number): string => inWords(formatQuantity(pa, 'absolutePressure'));
const difference = (pa: number, uncertainty: number | null): string =>
  inWords(formatQuantity(pa, 'pressureDifference', { uncertainty, keepsSign: true }));

/** The strip as a sentence, for those who hear it instead of seeing it. */
export function sayWindow(name: string, window: PressureWindow): string {
  const { lowestPa, highestPa, vacuumMargin, lowerWallKind } = window;
  const lowerWallMargin = lowerWallFigure(window);
  const span =
    lowestPa === null || highestPa === null
      ? 'pressures not known'
      : `water between ${absolute(lowestPa)} and ${absolute(highestPa)}`;
  const right =
    vacuumMargin.value === null
      ? 'vacuum margin not known'
      : `vacuum margin to room air ${difference(vacuumMargin.value, vacuumMargin.expandedUncertainty)}${at(window.highestWhere)}`;
  const wall = lowerWallKind === null ? 'lower wall' : lowerWallNouns[lowerWallKind];
  const left =
    lowerWallMargin.value === null
      ? 'margin to the lower wall not known'
      : `margin to ${wall} ${difference(lowerWallMargin.value, lowerWallMargin.expandedUncertainty)}${at(window.lowerWallWhere)}`;
  return `${name}: ${span}; ${right}; ${left}`;
}

const at = (where: string | null): string => (where === null ? '' : ` at ${where}`);
