/** What a rule says about its condition at this tick, before any delay. */
export const Verdict = {
  no: 0,
  yes: 1,
  /** Cannot be judged: an input is bad or missing. The alarm stays as it is; INS-1 speaks for the input. */
  hold: 2,
} as const;
export type Verdict = (typeof Verdict)[keyof typeof Verdict];
