/** A command and the second from the start at which it is given. */
export interface ScheduledCommand {
  readonly atS: number;
  readonly command: Readonly<Record<string, unknown>>;
}

/** Rows in order of time; those of one second in the order they were written. */
export class Schedule {
  private readonly rows: ScheduledCommand[];

  constructor(rows: readonly ScheduledCommand[]) {
    this.rows = [...rows].sort((a, b) => a.atS - b.atS);
  }

  /** Takes out what is due. */
  due(nowS: number): ScheduledCommand[] {
    const until = this.rows.findIndex(({ atS }) => atS > nowS);
    return this.rows.splice(0, until < 0 ? this.rows.length : until);
  }
}
