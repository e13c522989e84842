const MINUTE_MS = 60_000;
/** Lines of each kind in a minute. */
const LINES = 3;

/** Tells of what happens often: a few lines a minute, and how many more there were when the next minute's first one comes. */
export class BoundedNotes {
  private readonly kinds = new Map<string, { startMs: number; told: number; held: number }>();

  constructor(
    private readonly say: (line: string) => void,
    private readonly monotonicMs: () => number,
  ) {}

  /** @param kind one of a few fixed words, never what someone sent */
  note(kind: string, line: string): void {
    const nowMs = this.monotonicMs();
    const last = this.kinds.get(kind);
    const minute =
      last === undefined || nowMs - last.startMs >= MINUTE_MS ? { startMs: nowMs, told: 0, held: 0 } : last;
    if (minute !== last) {
      this.kinds.set(kind, minute);
      if (last !== undefined && last.held > 0) this.say(`MQTT: ${last.held} more like it (${kind}) before.`);
    }
    if (minute.told >= LINES) {
      minute.held += 1;
      return;
    }
    minute.told += 1;
    this.say(line);
  }
}
