/**
 * Many readers or one changer. A changer waits for the readers inside, and new readers wait for it, so that no
 * reader meets a table or a file that has just been replaced.
 */
export class ReadGate {
  #readers = 0;
  #closed: Promise<void> | null = null;
  #whenEmpty: (() => void) | null = null;

  async read<Value>(job: () => Promise<Value>): Promise<Value> {
    while (this.#closed !== null) await this.#closed;
    this.#readers++;
    try {
      return await job();
    } finally {
      this.#readers--;
      if (this.#readers === 0) this.#whenEmpty?.();
    }
  }

  async change<Value>(job: () => Promise<Value>): Promise<Value> {
    while (this.#closed !== null) await this.#closed;
    let open: () => void = () => undefined;
    this.#closed = new Promise((resolve) => (open = resolve));
    try {
      if (this.#readers > 0) await new Promise<void>((resolve) => (this.#whenEmpty = resolve));
      return await job();
    } finally {
      this.#whenEmpty = null;
      this.#closed = null;
      open();
    }
  }
}
