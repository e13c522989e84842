import { cubicMetrePerSecond, type CubicMetrePerSecond } from '../units/quantity';

const power = (base: number, exponent: number): number => (exponent === 2 ? base * base : base ** exponent);

/**
 * Flow resistance against a reference at equal flow: (Δp ÷ q^n) ÷ (Δp₀ ÷ q₀^n), turbulent n = 2 (Darcy–Weisbach with a
 * constant friction factor); loaded filters and narrow channels 1 … 1.8, fitted at commissioning.
 */
export const relativeResistance = (
  drop: number,
  referenceDrop: number,
  flow: number,
  referenceFlow: number,
  exponent = 2,
): number => drop / referenceDrop / power(flow / referenceFlow, exponent);

/** Flow that a pressure moves through a commissioned resistance: q₀ (Δp/Δp₀)^(1/n). 0 where nothing pushes. */
export function flowOfPressure(
  drop: number,
  referenceDrop: number,
  referenceFlow: CubicMetrePerSecond,
  exponent = 2,
): CubicMetrePerSecond {
  const share = Math.max(0, drop / referenceDrop);
  return cubicMetrePerSecond(referenceFlow * (exponent === 2 ? Math.sqrt(share) : share ** (1 / exponent)));
}

/** Flow against what it should be. */
export const flowShare = (flow: number, expected: number): number => flow / expected;
