/**
 * One task at a time. Of those asked meanwhile only the newest waits: the one that waited before is overtaken and
 * never begun. What runs already ends in its own time, so that somebody is always answered.
 */
export class NewestFirst {
  private running = false;
  private waiting: { readonly begin: () => void; readonly overtake: () => void } | null = null;

  /** What the task gives; null where it was overtaken. */
  async run<Value>(task: () => Promise<Value>): Promise<Value | null> {
    if (this.running && !(await this.turn())) return null;
    this.running = true;
    try {
      return await task();
    } finally {
      this.running = false;
      const next = this.waiting;
      this.waiting = null;
      // Taken before anybody who asks only now could come between.
      if (next !== null) this.running = true;
      next?.begin();
    }
  }

  private turn(): Promise<boolean> {
    this.waiting?.overtake();
    return new Promise((resolve) => {
      this.waiting = { begin: () => resolve(true), overtake: () => resolve(false) };
    });
  }
}
