import type { PlainPoint } from './plan-points';

/** Figures that stand still on a sound unit whatever its load: a change of one of them is a change of the plant. */
export const shiftSignals = [
  'heatBalance',
  'capture',
  'flowShare',
  'uaRatio',
  'pumpEfficiency',
  'inLeak',
] as const satisfies readonly PlainPoint[];

/** What moves together on a sound unit: the pattern of its water, warm and cold, and of its pressures. */
export const patternSignals = [
  'loop.flow',
  'supplyTank.pressure',
  'separator.pressure',
  'supply.temperature',
  'return.temperature',
  'facility.flow',
] as const satisfies readonly PlainPoint[];

export const watchedSignals = [...shiftSignals, ...patternSignals] as const;

/** One mean of so long, ms: more than three time constants of a loop (1 to 3 min, common practice, no source), so that means stand for themselves. */
export const blockMs = 600_000;

/** A value is looked at once in so long, ms. */
export const lookMs = 10_000;
