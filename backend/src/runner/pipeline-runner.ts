import type { RawMessage } from '../evaluation/pipeline/inputs';
import type { Pipeline } from '../evaluation/pipeline/pipeline';
import type { Acceptance } from '../evaluation/sample/acceptance';
import type { Clock } from '../ports/clock';
import type { MessageSink } from '../ports/message-sink';
import { peekSourceTime } from './peek-source-time';
import type { RecordedAlarms } from './recorded-alarms';
import type { RecordedChanges } from './recorded-changes';
import type { TickClock } from './tick-clock';
import type { SystemWatch } from './watch/system-watch';

/** Owns the pipeline: feeds it one input at a time and sees that what comes out is recorded before it is shown. */
export class PipelineRunner implements MessageSink {
  private acceptedAtMs = Number.NaN;
  private judges = true;
  private ticked = false;

  constructor(
    readonly pipeline: Pipeline,
    private readonly alarms: RecordedAlarms,
    private readonly changes: RecordedChanges,
    private readonly tickClock: TickClock,
    private readonly clock: Clock,
    /** Measures the program itself; left out, nothing is judged of it. */
    private readonly system: SystemWatch | null = null,
  ) {}

  accept(message: RawMessage): Acceptance {
    if (this.judges && this.tickClock.kind === 'source') this.reach(message);
    const acceptance = this.pipeline.accept(message, this.tickClock.nowMs(), this.clock.wallMs());
    if (acceptance.accepted > 0) this.acceptedAtMs = this.clock.monotonicMs();
    return acceptance;
  }

  /** On the wall clock: runs what is due. On both: tries again what the journal refused. */
  tick(): void {
    this.ticked = true;
    if (this.judges && this.tickClock.kind === 'wall') this.advance();
  }

  /** Runs what is due, and nothing after it. On the source clock messages move the clock no more. */
  endJudging(): void {
    this.tick();
    this.judges = false;
  }

  /** The first tick is done and judging has not been ended. */
  isJudging(): boolean {
    return this.ticked && this.judges;
  }

  /** Again and again: what the journal refused, and what folds otherwise without a change of any alarm. */
  retryJournal(): void {
    if (this.alarms.waiting() > 0) this.alarms.record([], this.clock.wallMs());
    this.alarms.follow(this.clock.wallMs());
    if (this.changes.waiting() > 0) this.changes.record([], [], this.clock.wallMs());
  }

  /** Seconds since the newest accepted sample arrived; null before the first. */
  lastSampleAge(): number | null {
    const age = (this.clock.monotonicMs() - this.acceptedAtMs) / 1000;
    return Number.isNaN(age) ? null : age;
  }

  /** On the source clock the slices due before a newer time run first, so that a replay is the same twice. */
  private reach(message: RawMessage): void {
    const sourceMs = peekSourceTime(this.pipeline.site, message, this.tickClock.nowMs());
    if (this.tickClock.reach(sourceMs)) this.advance();
  }

  private advance(): void {
    const nowMs = this.tickClock.nowMs();
    const beganMs = this.clock.monotonicMs();
    const transitions = this.pipeline.advance(nowMs, this.system?.state());
    this.system?.ticked(nowMs, this.clock.monotonicMs() - beganMs);
    if (transitions.length > 0) this.alarms.record(transitions, this.clock.wallMs());
    const permits = this.pipeline.takePermitChanges();
    const alerts = this.pipeline.takeAlertChanges();
    const tests = this.pipeline.takeTightnessChanges();
    const guided = this.pipeline.takeGuidedChanges();
    if (permits.length + alerts.length + tests.length + guided.length > 0)
      this.changes.record(permits, alerts, this.clock.wallMs(), tests, guided);
  }
}
