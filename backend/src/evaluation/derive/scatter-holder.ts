import type { BudgetHolder } from './uncertainty-budget';

/** Whatever adds up what Welch–Satterthwaite needs until the next value is written: the frame of a unit. */
export interface ScatterHolder extends BudgetHolder {
  /** Σ u_i⁴/ν_i of the parts that rest on few observations. */
  scatter: number;
}
