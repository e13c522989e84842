import type { RateKind } from '../../ports/rate-limits';

export interface Limit {
  readonly points: number;
  readonly windowS: number;
}

/**
 * What one station may ask for. Fifty screens may stand behind one address: each loads its screen with some
 * 30 requests and then asks for a few a minute, so that all fifty at once are 1,500; they may act eight times
 * a minute each at the height of a disturbance, and come back together after a restart of the network.
 */
export const limitsOfKind: Readonly<Record<RateKind, Limit>> = {
  read: { points: 12_000, windowS: 60 },
  action: { points: 1200, windowS: 60 },
  // Beside the lock-out of a name: fifty people sign in at the change of a shift.
  signIn: { points: 120, windowS: 60 },
  // Each of fifty screens tries again every one to five seconds while it is refused.
  handshake: { points: 3000, windowS: 60 },
  event: { points: 3000, windowS: 60 },
};
