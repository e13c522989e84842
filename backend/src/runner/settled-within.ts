import type { Ticker } from '../ports/ticker';

/** Whether something settles within a time, by the ticker; it goes on all the same where it does not. */
export async function settledWithin(work: Promise<unknown>, withinMs: number, ticker: Ticker): Promise<boolean> {
  let tellLate = (): void => undefined;
  const late = new Promise<boolean>((resolve) => (tellLate = () => resolve(false)));
  const waiting = ticker.every(withinMs, () => tellLate());
  try {
    return await Promise.race([work.then(() => true), late]);
  } finally {
    waiting.stop();
  }
}
