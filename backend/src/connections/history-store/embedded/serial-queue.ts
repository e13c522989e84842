/** Runs jobs one after another, in the order in which they came. A failed job fails alone. */
export class SerialQueue {
  #last: Promise<unknown> = Promise.resolve();

  run<Value>(job: () => Promise<Value>): Promise<Value> {
    const result = this.#last.then(job);
    this.#last = result.catch(() => undefined);
    return result;
  }

  /** Resolves when everything that was queued before is over. */
  idle(): Promise<void> {
    return this.run(() => Promise.resolve());
  }
}
