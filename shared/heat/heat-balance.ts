import { combine2 } from '../uncertainty/combine';
import type { Watt } from '../units/quantity';

/** z = (P − Q)/√(u(Q)² + u(P)²): how many standard uncertainties lie between power and heat removed (GUM). */
export const heatBalanceSignificance = (heatRemoved: Watt, heatRemovedU: number, power: Watt, powerU: number): number =>
  (power - heatRemoved) / combine2(heatRemovedU, powerU);
