import { pascalDifference, type CubicMetrePerSecond, type PascalDifference } from '../units/quantity';

/**
 * Friction loss of a commissioned segment at this flow, from its loss at rated flow: Δp = Δp_r (q/q_r)² for
 * turbulent flow (Darcy–Weisbach with a constant friction factor). Against the flow's direction it is negative.
 */
export function flowLoss(
  lossAtRatedFlow: PascalDifference,
  flow: CubicMetrePerSecond,
  ratedFlow: CubicMetrePerSecond,
): PascalDifference {
  const share = flow / ratedFlow;
  return pascalDifference(lossAtRatedFlow * share * Math.abs(share));
}
