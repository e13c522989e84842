import { CodedError } from '@ebbline/shared/errors/coded-error';
import { OutcomeLog } from '../../evaluation/limit-trial/outcome-log';
import { probeUncertainty } from '../../evaluation/limit-trial/probe-uncertainty';
import { measuredSlots } from '../../evaluation/limit-trial/recomputed-trial';
import type { TrialColumns, UnitTrial } from '../../evaluation/limit-trial/trial-columns';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { HistoryStore } from '../../ports/history-store';
import { readStretch } from './read-stretch';
import { subjectTrial } from './subject-trial';
import type { TrialPlan } from './trial-plan';
import type { TrialKind, TrialRates } from './trial-rates';
import type { TrialSubject } from './trial-subject';

export interface TrialSurroundings {
  readonly store: Pick<HistoryStore, 'read' | 'readSeconds'>;
  readonly monotonicMs: () => number;
  /** How fast earlier trials went. */
  readonly rates: TrialRates;
  /** Lets other work come in between. */
  readonly pause: () => Promise<void>;
}

const hourMs = 3_600_000;
/** Columns that are read at once. */
const stretchMs = { stored: 24 * hourMs, recomputed: hourMs } as const;
const firstStretchMs = { stored: hourMs, recomputed: hourMs / 12 } as const;
/** From this share on the speed of a trial itself says most of how long it takes. */
const tellingShare = 0.02;
/** Steps between two looks at the clock, and how long the thread is kept at once. */
const stepsAtOnce = { stored: 1000, recomputed: 25 } as const;
const sliceMs = 10;
/** What was measured in so long before it is enough to work out an uncertainty. */
const probeMs = 120_000;

/** One trial on its way: unit after unit, stretch after stretch. */
export class TrialRun {
  readonly logs = { live: new OutcomeLog(), proposed: new OutcomeLog() };
  state: 'running' | 'done' | 'cancelled' | 'failed' = 'running';
  fault: string | null = null;
  minutesBeforeMs = Number.NEGATIVE_INFINITY;
  /** Uncertainties that the rule keeps as a guard were wanted, and so many were found. */
  isGuarded = false;
  probes = 0;
  judgedMs = 0;
  missingMs = 0;
  private doneMs = 0;
  /** End of what the unit under way was judged up to. */
  private reachedMs = Number.NaN;
  private readonly startedMs: number;

  constructor(
    readonly plan: TrialPlan,
    private readonly site: CompiledSite,
    private readonly around: TrialSurroundings,
  ) {
    this.startedMs = around.monotonicMs();
  }

  get progress(): number {
    return this.state === 'done' ? 1 : Math.min(1, this.doneMs / this.allMs());
  }

  /** By the speed so far, at first by that of earlier trials; null where neither is known: until a first small piece is done. */
  secondsLeft(): number | null {
    if (this.state !== 'running') return this.state === 'done' ? 0 : null;
    const leftMs = this.allMs() - this.doneMs;
    const elapsedMs = this.around.monotonicMs() - this.startedMs;
    const own = this.doneMs > 0 ? elapsedMs / this.doneMs : null;
    // Its first moments tell little: until then by those that went before, where there were any.
    const known = this.progress < tellingShare ? this.around.rates.of(this.kind()) : null;
    const rate = known ?? own;
    return rate === null ? null : (rate * leftMs) / 1000;
  }

  /** Whether either setting would have it told anew. */
  get tellsAgain(): boolean {
    return [this.logs.live, this.logs.proposed].some(({ reAlarmAfterMs }) => Number.isFinite(reAlarmAfterMs));
  }

  cancel(): void {
    if (this.state === 'running') this.state = 'cancelled';
  }

  /** Resolves when it has ended, however it ended. */
  async run(): Promise<void> {
    try {
      for (const subject of this.plan.subjects) await this.runSubject(subject);
      if (this.progress >= tellingShare)
        this.around.rates.note(this.kind(), this.around.monotonicMs() - this.startedMs, this.doneMs);
      if (this.state === 'running') this.state = 'done';
    } catch (cause) {
      if (this.state === 'running') this.state = 'failed';
      this.fault = cause instanceof CodedError ? cause.message : 'an unexpected fault; the log of the program tells it';
      if (!(cause instanceof CodedError)) throw cause;
    }
  }

  private async runSubject(subject: TrialSubject): Promise<void> {
    const { fromMs, leadMs, method, toMs } = this.plan;
    const { site, trial } = subjectTrial(this.site, this.plan, subject, this.logs);
    const [judgedMs, missingMs] = [this.judgedMs, this.missingMs];
    let atMs = fromMs - leadMs;
    while (atMs < toMs && this.state === 'running') {
      // A small piece first, so that it is soon known how long all of it takes.
      const endMs = Math.min(atMs + (this.doneMs === 0 ? firstStretchMs : stretchMs)[method], toMs);
      const { parts, minutesBeforeMs } = await readStretch(this.around.store, site, trial.slots, atMs, endMs);
      this.minutesBeforeMs = Math.max(this.minutesBeforeMs, minutesBeforeMs);
      await this.probe(site, trial, parts);
      for (const columns of parts) await this.runColumns(trial, columns);
      this.judgedMs = judgedMs + trial.judgedMs;
      this.missingMs = missingMs + trial.missingMs;
      atMs = endMs;
    }
    for (const log of [this.logs.live, this.logs.proposed]) log.settle(this.reachedMs);
  }

  private async runColumns(trial: UnitTrial, columns: TrialColumns): Promise<void> {
    const { monotonicMs, pause } = this.around;
    const steps = stepsAtOnce[this.plan.method];
    let beganMs = monotonicMs();
    for (let place = 0; place < columns.count; place += steps) {
      const end = Math.min(place + steps, columns.count);
      trial.run(columns, place, end);
      this.doneMs += (end - place) * columns.stepMs;
      this.reachedMs = columns.startMs + end * columns.stepMs;
      if (monotonicMs() - beganMs < sliceMs) continue;
      await pause();
      if (this.state !== 'running') return;
      beganMs = monotonicMs();
    }
  }

  /** Uncertainties that a rule keeps as a guard, in the middle of what is known of a stretch; else the last one holds. */
  private async probe(site: CompiledSite, trial: UnitTrial, parts: readonly TrialColumns[]): Promise<void> {
    for (const slot of trial.guards) {
      this.isGuarded = true;
      const middleMs = middleOfKnown(parts, trial.slots.indexOf(slot));
      if (middleMs === null) continue;
      const { store } = this.around;
      const stretch = await readStretch(store, site, measuredSlots(site), middleMs - probeMs, middleMs + 1000);
      const columns = stretch.parts.find(({ stepMs }) => stepMs === 1000);
      const expanded = columns === undefined ? Number.NaN : probeUncertainty(site, columns, slot);
      if (Number.isNaN(expanded)) continue;
      trial.setUncertainty(slot, expanded);
      this.probes += 1;
    }
  }

  private kind(): TrialKind {
    return { method: this.plan.method, entry: this.plan.entry.id };
  }

  private allMs(): number {
    const { fromMs, leadMs, subjects, toMs } = this.plan;
    return subjects.length * (toMs - fromMs + leadMs);
  }
}

/** Second in the middle of those in which a column has a value; null where it has none. */
function middleOfKnown(parts: readonly TrialColumns[], column: number): number | null {
  const known: number[] = [];
  for (const { count, startMs, stepMs, values } of parts) {
    if (stepMs !== 1000) continue;
    for (let place = 0; place < count; place += 1)
      if (!Number.isNaN(values[column]?.[place])) known.push(startMs + place * stepMs);
  }
  return known[Math.floor(known.length / 2)] ?? null;
}
