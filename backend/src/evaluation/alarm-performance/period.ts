/** Half-open [fromMs, toMs). */
export interface Period {
  readonly fromMs: number;
  readonly toMs: number;
}

export const isWithin = ({ fromMs, toMs }: Period, atMs: number): boolean => atMs >= fromMs && atMs < toMs;
