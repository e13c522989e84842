/** What of the queue could not be kept, since the start of the program. */
export class QueueLosses {
  private rows = 0;
  private tornBytes = 0;
  private fromMs = Infinity;
  private untilMs = -Infinity;
  private refusedRows = 0;
  private removedRows = 0;

  /** The oldest gave way. */
  overflowed(rows: number, oldestMs: number, newestMs: number): void {
    this.rows += rows;
    this.fromMs = Math.min(this.fromMs, oldestMs);
    this.untilMs = Math.max(this.untilMs, newestMs);
  }

  /** A checksum refused them. */
  refused(rows: number): void {
    this.refusedRows += rows;
  }

  /** Someone took their file away. */
  removed(rows: number): void {
    this.removedRows += rows;
  }

  /** No whole block: what was being written when the program was killed. */
  torn(bytes: number): void {
    this.tornBytes += bytes;
  }

  get rowsLost(): number {
    return this.rows + this.refusedRows + this.removedRows;
  }

  /** For health. */
  get told(): string[] {
    const at = (ms: number): string => (Number.isFinite(ms) ? new Date(ms).toISOString() : 'unknown');
    return [
      ...(this.rows === 0
        ? []
        : [`${this.rows} rows lost since the start, of ${at(this.fromMs)} to ${at(this.untilMs)}: the queue was full`]),
      ...(this.refusedRows === 0 ? [] : [`${this.refusedRows} rows lost since the start: their checksum refused them`]),
      ...(this.removedRows === 0 ? [] : [`${this.removedRows} rows lost since the start: their file was removed`]),
      ...(this.tornBytes === 0
        ? []
        : [`a block of ${this.tornBytes} bytes was torn when the program ended; its rows were never confirmed`]),
    ];
  }
}
