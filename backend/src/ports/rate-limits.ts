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

/** For what counts only where it proves wrong: looked at before, counted after. */
export interface AttemptLimits extends Pick<RateLimits, 'waitOf'> {
  /** As `waitOf`, of what is counted so far; nothing is added. */
  waitNow(kind: RateKind, station: string): Promise<number | null>;
}

export const RATE_LIMITS = Symbol('RateLimits');
