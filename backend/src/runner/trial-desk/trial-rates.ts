/** What a trial is reckoned by: entries cost otherwise, and a way of judging far more than another. */
export interface TrialKind {
  readonly method: 'stored' | 'recomputed';
  readonly entry: string;
}

/** How fast trials went, so that a new one can say how long it will take: clock time for each ms of recorded time of one unit. */
export class TrialRates {
  private readonly byEntry = new Map<string, number>();
  private readonly byMethod = new Map<string, number>();

  note({ entry, method }: TrialKind, elapsedMs: number, recordedMs: number): void {
    if (!(elapsedMs > 0) || !(recordedMs > 0)) return;
    this.byEntry.set(`${method} ${entry}`, elapsedMs / recordedMs);
    this.byMethod.set(method, elapsedMs / recordedMs);
  }

  /** Of the same entry, else of any that was judged in the same way; null: none has ended yet. */
  of({ entry, method }: TrialKind): number | null {
    return this.byEntry.get(`${method} ${entry}`) ?? this.byMethod.get(method) ?? null;
  }
}
