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

/**
 * What another viscosity makes of a loss at the same flow: (μ/μ₀)^(2 − n). Of Δp = f (L/D) ρ v²/2 with f ~ Re^(n − 2): laminar n = 1 gives
 * Hagen–Poiseuille's Δp ~ μ, turbulent n = 2 none (White, Fluid Mechanics, section 6.4).
 */
export const viscosityOnLoss = (viscosityRatio: number, exponent: number): number => viscosityRatio ** (2 - exponent);

/** Flow against what it should be. */
export const flowShare = (flow: number, expected: number): number => flow / expected;
