import { combine2 } from '../uncertainty/combine';
import type { Watt } from '../units/quantity';

/** Q/P: heat found in one place over the power that should be there. */
export const heatBalance = (heatRemoved: Watt, power: Watt): number => heatRemoved / power;

/** z = (P − Q)/√(u(Q)² + u(P)²): how many standard uncertainties lie between power and heat removed (GUM). */
export const heatBalanceSignificance = (heatRemoved: Watt, heatRemovedU: number, power: Watt, powerU: number): number =>
  (power - heatRemoved) / combine2(heatRemovedU, powerU);
