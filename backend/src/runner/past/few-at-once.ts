import { fail, type Result } from '@ebbline/shared/errors/result';
import type { PastFault } from '../../ports/past-desk';

/** More would take history and the thread of the judge from those who work now. */
const mostRunning = 2;
const mostWaiting = 16;

/** Runs a few pieces of work at once; some wait, and more are refused. */
export class FewAtOnce {
  private running = 0;
  private readonly waiting: (() => void)[] = [];

  async run<Value>(work: () => Promise<Result<Value, PastFault>>): Promise<Result<Value, PastFault>> {
    if (this.running >= mostRunning) {
      if (this.waiting.length >= mostWaiting) {
        const message = 'Many look into the past at once; ask again in a moment.';
        return fail({ code: 'TOO_MANY_REQUESTS', message });
      }
      await new Promise<void>((resolve) => this.waiting.push(resolve));
    } else this.running += 1;
    try {
      return await work();
    } finally {
      const next = this.waiting.shift();
      // Its place goes to the one that waits longest.
      if (next === undefined) this.running -= 1;
      else next();
    }
  }
}
