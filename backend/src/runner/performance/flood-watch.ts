import type { Flood } from '@ebbline/shared/contract/alarm-performance';
import { AlarmHistory } from '../../evaluation/alarm-performance/alarm-history';
import { FloodMeter, floodWindowMs, type FloodSpan } from '../../evaluation/alarm-performance/flood-meter';
import { floodCauses, type JournalStep } from '../../evaluation/alarm-performance/journal-step';
import type { AlarmJournal, StepsPage } from '../../ports/alarm-journal';
import { toFlood } from './to-performance';

/** A restart looks back so far for what is going on, and four times as far as long as a flood was on all that time. */
const lookBackMs = 2 * 86_400_000;
const lookBackMostMs = 512 * 86_400_000;
/** Rows further ahead were written by a clock that was wrong: no time that comes would end what they begin. */
const aheadMs = 60_000;
/** What is told late by so much is still told before the end of a flood is decided. */
const lateMs = 1000;
const keptAtLeast = 1000;

interface FloodRow {
  readonly cause: string;
  readonly atMs: number;
  readonly reason: string;
}

/**
 * Tells where a flood of alarms begins and ends: one event, with the alarms that it began with. It follows the rows as the journal
 * commits them, so that a restart finds the same by reading them again. Each begin and end is a row of the journal itself.
 */
export class FloodWatch {
  private history = new AlarmHistory(null);
  private meter = new FloodMeter();
  private readonly waiting: FloodRow[] = [];
  private taken = 0;
  private changes = 0;
  /** As asked for since the last change; undefined: not yet. A flood of thousands is put into words only for who looks. */
  private shown: Flood | null | undefined = null;
  /** The newest row of a flood that the journal has. */
  private lastRow: string | null = null;
  private restoring = false;
  private lastEnded: FloodSpan | null = null;

  constructor(
    private readonly journal: Pick<AlarmJournal, 'steps' | 'appendSystem'>,
    private readonly wallMs: () => number,
  ) {}

  /** The flood that goes on, or null. */
  flood(): Flood | null {
    const { flood } = this.meter;
    if (this.shown === undefined) this.shown = flood === null ? null : toFlood(flood, this.history.annunciations);
    return this.shown;
  }

  /** Counts up whenever `flood` may differ from before. */
  version(): number {
    return this.changes;
  }

  /**
   * Finds again what was going on; what was not recorded of it is recorded now.
   * @param nowMs where it is not known yet, the time that the program before this one had reached; NaN: there was none
   */
  restore(nowMs: number): void {
    if (Number.isNaN(nowMs)) return;
    this.restoring = true;
    for (let backMs = lookBackMs; backMs <= lookBackMostMs; backMs *= 4) {
      this.read(nowMs - backMs, nowMs + aheadMs);
      this.settle(nowMs);
      // A flood that was on when what is read begins, and of which no begin is read: that lies further back.
      const flood = this.meter.flood ?? this.lastEnded;
      if (this.lastRow !== null || flood === null || flood.firstMs > nowMs - backMs + floodWindowMs) break;
    }
    this.restoring = false;
    const { flood } = this.meter;
    if (flood !== null && this.lastRow !== floodCauses.began) this.tellBegin(flood);
    if (flood === null && this.lastRow === floodCauses.began)
      this.tellEnd(this.lastEnded?.toMs ?? nowMs, this.lastEnded);
    this.show();
    this.record();
  }

  private read(fromMs: number, toMs: number): void {
    [this.history, this.meter, this.taken, this.lastEnded] = [new AlarmHistory(null), new FloodMeter(), 0, null];
    for (let after: number | null = 0; after !== null;) {
      const { steps, next }: StepsPage = this.journal.steps({ fromMs, toMs, after });
      this.take(steps);
      after = next;
    }
  }

  /** Rows as committed, in order. */
  take(steps: readonly JournalStep[]): void {
    for (const step of steps) {
      if (step.cause === floodCauses.began || step.cause === floodCauses.ended) this.lastRow = step.cause;
      this.history.take(step);
    }
    const { annunciations } = this.history;
    for (; this.taken < annunciations.length; this.taken += 1) this.note(annunciations[this.taken]?.atMs ?? 0);
    if (!this.restoring) this.show();
    this.record();
  }

  /** Time goes on: a flood may end without anything that happens. */
  settle(nowMs: number): void {
    const ended = this.meter.settle(nowMs - lateMs);
    if (ended !== null) this.ended(ended);
    this.forget(nowMs);
    this.record();
  }

  private note(atMs: number): void {
    const before = this.meter.flood;
    const ended = this.meter.note(atMs);
    if (ended !== null) this.ended(ended);
    const { flood } = this.meter;
    if (flood !== null && (before === null || ended !== null) && !this.restoring) this.tellBegin(flood);
  }

  private ended(flood: FloodSpan): void {
    this.lastEnded = flood;
    if (!this.restoring) this.tellEnd(flood.toMs ?? flood.lastMs, flood);
    this.show();
  }

  private tellBegin(flood: FloodSpan): void {
    const began = toFlood(flood, this.history.annunciations).firstOuts.map(({ alarm }) => alarm);
    const reason = `flood of alarms: ${flood.annunciations} told within ten minutes; it began with ${began.slice(0, 5).join(', ')}`;
    this.waiting.push({ cause: floodCauses.began, atMs: flood.fromMs, reason });
  }

  private tellEnd(atMs: number, flood: FloodSpan | null): void {
    const told = flood === null ? '' : `: ${flood.annunciations} were told, ${flood.most} within ten minutes at most`;
    this.waiting.push({ cause: floodCauses.ended, atMs, reason: `flood of alarms is over${told}` });
  }

  private show(): void {
    if (this.shown !== null || this.meter.flood !== null) this.changes += 1;
    this.shown = this.meter.flood === null ? null : undefined;
  }

  /** In order; what the journal refuses is tried again with the next call. */
  private record(): void {
    for (let next = this.waiting[0]; next !== undefined && !this.restoring; next = this.waiting[0]) {
      try {
        this.journal.appendSystem({ ...next, actor: null }, this.wallMs());
      } catch {
        // Kept; the health of the journal says that it refuses.
        return;
      }
      this.lastRow = next.cause;
      this.waiting.shift();
    }
  }

  private forget(nowMs: number): void {
    const { annunciations, standings, foldedMs } = this.history;
    if (!(annunciations.length + standings.length + foldedMs.length >= keptAtLeast) || Number.isNaN(nowMs)) return;
    const keepMs = Math.min(nowMs - 2 * floodWindowMs, this.meter.flood?.firstMs ?? nowMs);
    this.history.forget(keepMs);
    this.taken = this.history.annunciations.length;
  }
}
