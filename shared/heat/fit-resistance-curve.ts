import { weightedLine } from '../statistics/weighted-line';

/** A measured resistance, K/W, at a flow in any unit that all points share, with its standard uncertainty, K/W. */
export interface ResistancePoint {
  readonly flow: number;
  readonly resistance: number;
  readonly u: number;
}

/** R = fixed + convective · flow^−exponent: what flow does not change, K/W, and what it does, K/W at a flow of 1. */
export interface ResistanceCurve {
  readonly fixed: number;
  readonly convective: number;
  readonly exponent: number;
}

/** A fitted exponent is looked for between these: plates lie from 0.3 (developing laminar) to 0.8 (turbulent). */
export const exponentRange = { least: 0.2, most: 1.2 } as const;

const steps = 50;
const golden = (Math.sqrt(5) - 1) / 2;

/**
 * Fits R = a + b q^−n by least squares with weights 1/u²: for a given exponent a straight line in q^−n, the method that Wilson
 * published in 1915; without one the exponent of the least misfit. A fixed part below 0 is none: b is then fitted alone. Null where
 * the resistance does not fall with flow, or nothing can be told of it.
 */
export function fitResistanceCurve(
  points: readonly ResistancePoint[],
  exponent: number | null,
): ResistanceCurve | null {
  // About the middle flow both terms are of one size, whatever the unit.
  const middle = Math.exp(points.reduce((sum, { flow }) => sum + Math.log(flow), 0) / points.length);
  const scaled = points.map((point) => ({ ...point, flow: point.flow / middle }));
  const found = linearAt(scaled, exponent ?? bestExponent(scaled));
  if (!(found.convective > 0 && Number.isFinite(found.fixed))) return null;
  return { ...found, convective: found.convective * middle ** found.exponent };
}

/** K/W at a flow. */
export const onCurve = ({ fixed, convective, exponent }: ResistanceCurve, flow: number): number =>
  fixed + convective * flow ** -exponent;

/** By how much it changes with flow, K/W for a flow of 1. */
export const slopeOn = ({ convective, exponent }: ResistanceCurve, flow: number): number =>
  -exponent * convective * flow ** (-exponent - 1);

function linearAt(points: readonly ResistancePoint[], exponent: number): ResistanceCurve {
  const x = points.map(({ flow }) => flow ** -exponent);
  const y = points.map(({ resistance }) => resistance);
  const weight = points.map(({ u }) => u ** -2);
  const { intercept: fixed, slope: convective } = weightedLine(x, y, weight);
  if (fixed >= 0 || Number.isNaN(fixed)) return { fixed, convective, exponent };
  const sum = (of: (i: number) => number): number => weight.reduce((total, w, i) => total + w * of(i), 0);
  const alone = sum((i) => (x[i] ?? 0) * (y[i] ?? 0)) / sum((i) => (x[i] ?? 0) ** 2);
  return { fixed: 0, convective: alone, exponent };
}

const misfit = (points: readonly ResistancePoint[], exponent: number): number => {
  const curve = linearAt(points, exponent);
  return points.reduce((sum, { flow, resistance, u }) => sum + ((resistance - onCurve(curve, flow)) / u) ** 2, 0);
};

/** The exponent of the least misfit: coarse steps first, as the part below 0 bends it, then a golden section. */
function bestExponent(points: readonly ResistancePoint[]): number {
  const { least, most } = exponentRange;
  const step = (most - least) / steps;
  const tried = Array.from({ length: steps + 1 }, (_, i) => least + i * step);
  const misfits = tried.map((one) => misfit(points, one));
  const best = tried[misfits.indexOf(Math.min(...misfits))] ?? least;
  let [low, high] = [Math.max(least, best - step), Math.min(most, best + step)];
  for (let i = 0; i < 40; i += 1) {
    const [one, other] = [high - golden * (high - low), low + golden * (high - low)];
    if (misfit(points, one) < misfit(points, other)) high = other;
    else low = one;
  }
  return (low + high) / 2;
}
