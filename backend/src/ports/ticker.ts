/** Calls again and again until told to stop. Tests drive one by hand. */
export interface Ticker {
  every(periodMs: number, work: () => void): { stop(): void };
}

export const TICKER = Symbol('Ticker');
