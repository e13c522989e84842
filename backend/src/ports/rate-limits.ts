/** What is counted apart, each with its own limit. */
export const rateKinds = ['read', 'action', 'signIn', 'handshake', 'event'] as const;
export type RateKind = (typeof rateKinds)[number];

/** How much one station may ask for; memory is bounded however many stations there are. */
export interface RateLimits {
  /** Null: go on. Otherwise how many whole seconds it has to wait. `station` as the edge says. */
  waitOf(kind: RateKind, station: string): Promise<number | null>;
  /** How often each kind was refused since the start. */
  refused(): Readonly<Record<RateKind, number>>;
}

export const RATE_LIMITS = Symbol('RateLimits');
