import { randomUUID } from 'node:crypto';
import { setImmediate as otherWork } from 'node:timers/promises';
import type { LimitTrial, StartTrialRequest } from '@ebbline/shared/contract/limit-trial';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { HistoryStore } from '../../ports/history-store';
import type { TrialDesk, TrialFault } from '../../ports/trial-desk';
import { toLimitTrial } from './to-limit-trial';
import { planTrial } from './trial-plan';
import { TrialRates } from './trial-rates';
import { TrialRun } from './trial-run';

export interface TrialDeskParts {
  /** The site in force, with the limits in force. */
  readonly site: () => CompiledSite;
  readonly store: Pick<HistoryStore, 'read' | 'readSeconds'>;
  /** Time in force, ms; NaN before there is one. */
  readonly nowMs: () => number;
  readonly monotonicMs: () => number;
  /** An unexpected fault of ours. */
  readonly report: (fault: unknown) => void;
  readonly pause?: () => Promise<void>;
}

/** More would take too much from what judges now. */
const mostRunning = 2;
const mostKept = 20;

interface Kept {
  readonly run: TrialRun;
  /** As it was when the trial began: what is shown goes with it. */
  readonly site: CompiledSite;
}

/** Trials of this process, the latest ones, in memory. */
export class RunnerTrialDesk implements TrialDesk {
  private readonly kept = new Map<string, Kept>();
  private readonly rates = new TrialRates();

  constructor(private readonly parts: TrialDeskParts) {}

  start(request: StartTrialRequest): Result<LimitTrial, TrialFault> {
    const { monotonicMs, nowMs, pause = () => otherWork(), report, store } = this.parts;
    const site = this.parts.site();
    const plan = planTrial(site, request, nowMs());
    if (!plan.ok) return plan;
    if ([...this.kept.values()].filter(({ run }) => run.state === 'running').length >= mostRunning) {
      const message = `${mostRunning} trials run already; wait until one has ended, or cancel one`;
      return fail({ code: 'TRIALS_RUNNING', message });
    }
    const id = randomUUID();
    const run = new TrialRun(plan.value, site, { store, monotonicMs, pause, rates: this.rates });
    this.kept.set(id, { run, site });
    this.forgetOldest();
    run.run().catch(report);
    return ok(toLimitTrial(id, run, site));
  }

  find(id: string): Result<LimitTrial, TrialFault> {
    const kept = this.kept.get(id);
    if (kept !== undefined) return ok(toLimitTrial(id, kept.run, kept.site));
    return fail({ code: 'TRIAL_UNKNOWN', message: `no trial ${id} is known; the latest ${mostKept} are kept` });
  }

  cancel(id: string): Result<LimitTrial, TrialFault> {
    this.kept.get(id)?.run.cancel();
    return this.find(id);
  }

  /** Cancels all: the program ends. */
  stop(): void {
    for (const { run } of this.kept.values()) run.cancel();
  }

  private forgetOldest(): void {
    for (const [id, { run }] of this.kept) {
      if (this.kept.size <= mostKept) return;
      if (run.state !== 'running') this.kept.delete(id);
    }
  }
}
