/**
 * Whether our own client hears yet. What the broker confirmed before that would be heard by nobody, so others wait for it as they
 * connect, and come again where it takes too long.
 */
export class FirstHearing {
  private hears = false;
  private readonly waiting = new Set<() => void>();

  /** @param withinMs so long others wait; null: they need not wait at all */
  constructor(private readonly withinMs: number | null) {}

  /** Our own client has asked for its topics. */
  begun(): void {
    this.hears = true;
    for (const goOn of [...this.waiting]) goOn();
  }

  /** True once we hear; false where that took too long. */
  wait(): Promise<boolean> {
    const { withinMs } = this;
    if (this.hears || withinMs === null) return Promise.resolve(true);
    return new Promise((resolve) => {
      const end = (): void => {
        clearTimeout(timer);
        this.waiting.delete(end);
        resolve(this.hears);
      };
      const timer = setTimeout(end, withinMs);
      this.waiting.add(end);
    });
  }
}
