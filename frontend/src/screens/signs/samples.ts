import type { Figure, PressureWindow } from '@ebbline/shared/contract/live-feed';
import type { Quality, QualityReason } from '@ebbline/shared/contract/reading';

/** Invented values that the signs are shown with; none is of a plant. */
export const sampleFigure = (
  value: number | null,
  quality: Quality = 'good',
  reasons: readonly QualityReason[] = [],
  age: number | null = 1,
): Figure => ({ value, age, quality, reasons, expandedUncertainty: value === null ? null : Math.abs(value) * 0.02 });

const ambientPa = 101_300;

/** A loop between its walls. @param lowestPa @param highestPa ends of its water, Pa absolute; null: not known */
export function sampleWindow(lowestPa: number | null, highestPa: number | null): PressureWindow {
  const lowerWallPa = lowestPa === null ? null : 22_000;
  const margin = (value: number | null): Figure =>
    value === null ? sampleFigure(null, 'bad', ['inputBad']) : { ...sampleFigure(value), expandedUncertainty: 400 };
  return {
    lowestPa,
    lowestWhere: 'pump inlet',
    highestPa,
    highestWhere: 'supply header',
    ambientPa,
    lowerWallPa,
    lowerWallKind: lowestPa === null ? null : 'node',
    lowerWallWhere: 'return header',
    lowerWallMargin: margin(lowestPa === null || lowerWallPa === null ? null : lowestPa - lowerWallPa),
    vacuumMargin: margin(highestPa === null ? null : ambientPa - highestPa),
    vacuumMarginWorst: margin(highestPa === null ? null : ambientPa - highestPa),
    lowerWallGuardPa: 10_000,
    vacuumMarginGuardPa: 5_000,
    hourLowestPa: lowestPa === null ? null : lowestPa - 2_500,
    hourHighestPa: highestPa === null ? null : highestPa + 1_800,
  };
}
