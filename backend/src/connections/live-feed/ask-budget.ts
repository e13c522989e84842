/** So much may be ahead: who goes quickly from screen to screen waits for none of them. ms */
const aheadMs = 3000;
/** What every picture costs, however small. ms */
const leastMs = 100;

/**
 * How often one client may ask to be shown something. Every picture costs the time after which it would be told anew by itself, and
 * time pays for it: over a while nobody gets more by asking than by waiting.
 */
export class AskBudget {
  private paidAtMs = Number.NEGATIVE_INFINITY;

  mayAsk(monotonicMs: number): boolean {
    return this.paidAtMs - monotonicMs <= aheadMs;
  }

  /** @param paceMs of what is shown from now on */
  spend(paceMs: number, monotonicMs: number): void {
    this.paidAtMs = Math.max(this.paidAtMs, monotonicMs) + Math.max(leastMs, paceMs);
  }
}
