import { fail, type Failure, type Result } from '@ebbline/shared/errors/result';

type Refused = Failure<'TOO_MANY_REQUESTS'>;

/** Runs a few pieces of work at once; some wait, and more are refused. */
export class FewAtOnce {
  private running = 0;
  private readonly waiting: (() => void)[] = [];

  /** More would take history and the thread of the judge from those who work now. */
  constructor(
    private readonly mostRunning = 2,
    private readonly mostWaiting = 16,
    private readonly refusal = 'Many look into the past at once; ask again in a moment.',
  ) {}

  async run<Value, Fault>(work: () => Promise<Result<Value, Fault>>): Promise<Result<Value, Fault | Refused>> {
    if (this.running >= this.mostRunning) {
      if (this.waiting.length >= this.mostWaiting)
        return fail<Refused>({ code: 'TOO_MANY_REQUESTS', message: this.refusal });
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
