/** What was opened, to be closed in reverse order. */
export class ClosingStack {
  private readonly closers: (() => Promise<void> | void)[] = [];

  add(close: () => Promise<void> | void): void {
    this.closers.push(close);
  }

  /** Closes all, whatever happens to one of them; the first fault is thrown at the end. */
  async closeAll(): Promise<void> {
    const faults: unknown[] = [];
    for (let close = this.closers.pop(); close !== undefined; close = this.closers.pop()) {
      try {
        await close();
      } catch (fault) {
        faults.push(fault);
      }
    }
    if (faults.length > 0) throw faults[0];
  }
}
