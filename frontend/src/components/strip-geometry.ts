import type { Figure, PressureWindow } from '@ebbline/shared/contract/live-feed';
import type { PressureAxis } from './pressure-axis';
import { toX } from './pressure-axis';

/** A stretch of the axis, px. */
export interface Span {
  readonly x: number;
  readonly width: number;
}

export interface Gap extends Span {
  /** True where the gap is too small: it, and only it, is filled with colour. */
  readonly tooSmall: boolean;
}

/** Everything of one strip, px; null where it can't be known. */
export interface StripGeometry {
  readonly lowerWall: Span | null;
  readonly gapLeft: Gap | null;
  readonly bar: Span | null;
  readonly trail: Span | null;
  readonly gapRight: Gap | null;
  readonly ambient: Span | null;
}

/**
 * A margin is too small where it may lie below its guard: what is not certain counts against it
 * (guard band by the expanded uncertainty, as the alarm rules have it).
 * @param guardPa null where no guard is set: nothing to compare with
 */
export function isTooSmall(margin: Figure, guardPa: number | null): boolean {
  if (margin.value === null || guardPa === null) return false;
  return margin.value - (margin.expandedUncertainty ?? 0) < guardPa;
}

/**
 * The margin to the wall that is drawn. The margin of the second may still speak of another wall at the moment at
 * which the binding wall changes; number, name, guard and picture must speak of the same one.
 */
export function lowerWallFigure(window: PressureWindow): Figure {
  const { lowestPa, lowerWallPa, lowerWallMargin } = window;
  if (lowestPa === null || lowerWallPa === null || lowerWallMargin.value === null) return lowerWallMargin;
  return { ...lowerWallMargin, value: lowestPa - lowerWallPa };
}

/** Places the window on the axis. A crossed wall turns its gap round: it then spans what is beyond the wall. */
export function stripGeometry(window: PressureWindow, axis: PressureAxis): StripGeometry {
  const between = (fromPa: number | null, toPa: number | null): Span | null => {
    if (fromPa === null || toPa === null) return null;
    const ends = [toX(axis, fromPa), toX(axis, toPa)].map((x) => Math.min(axis.x1, Math.max(axis.x0, x)));
    const x = Math.min(...ends);
    return { x, width: Math.max(...ends) - x };
  };
  const gap = (span: Span | null, tooSmall: boolean): Gap | null => (span === null ? null : { ...span, tooSmall });
  const { lowestPa, highestPa, ambientPa, lowerWallPa } = window;
  return {
    lowerWall: between(axis.minPa, lowerWallPa),
    gapLeft: gap(between(lowerWallPa, lowestPa), isTooSmall(lowerWallFigure(window), window.lowerWallGuardPa)),
    bar: between(lowestPa, highestPa),
    trail: between(window.hourLowestPa, window.hourHighestPa),
    gapRight: gap(between(highestPa, ambientPa), isTooSmall(window.vacuumMargin, window.vacuumMarginGuardPa)),
    ambient: between(ambientPa, axis.maxPa),
  };
}
