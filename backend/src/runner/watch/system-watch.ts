import type { SystemState } from '../../evaluation/alarm-rules/system-state';
import type { Clock } from '../../ports/clock';
import type { HistoryStore } from '../../ports/history-store';
import type { ProgramWatch } from '../../ports/program-watch';
import type { TickFigures } from './tick-figures';
import type { WriteFigures } from './write-figures';

/** What the program measures of itself while it runs. */
export interface RunnerWatch {
  readonly ticks: TickFigures;
  readonly journalWrites: WriteFigures;
  readonly historyWrites: WriteFigures;
  readonly program: ProgramWatch;
}

export interface SystemFacts {
  readonly watch: RunnerWatch;
  readonly store: HistoryStore;
  /** Changes that the journal has not taken yet. */
  readonly unrecorded: () => number;
  /** Why the last rows of history were refused. */
  readonly notWritten: () => string | null;
}

/** As often as the judge looks at it, ms. */
const LOOK_MS = 1000;

/** What the judge is told of the program itself: measured once a second, however often it is asked. */
export class SystemWatch {
  private lookedMs = Number.NEGATIVE_INFINITY;
  private known: SystemState | undefined;

  constructor(
    private readonly facts: SystemFacts,
    private readonly clock: Clock,
    /** On the source clock nothing is due by itself, so nothing can be late. */
    private readonly kind: 'wall' | 'source',
  ) {}

  state(): SystemState | undefined {
    const nowMs = this.clock.monotonicMs();
    if (nowMs - this.lookedMs < LOOK_MS) return this.known;
    this.lookedMs = nowMs;
    return (this.known = this.measure());
  }

  ticked(nowMs: number, tookMs: number): void {
    this.facts.watch.ticks.ticked(this.kind, nowMs, tookMs);
  }

  private measure(): SystemState {
    const { watch, store, unrecorded, notWritten } = this.facts;
    const { diskFreeBytes, diskBytes } = watch.program.figures();
    const delayS = watch.program.takeWorstDelayS();
    const lagS = watch.ticks.takeWorstLagS();
    const waits = unrecorded();
    return {
      evaluationLagS: this.kind === 'wall' ? lagS : 0,
      threadDelayS: this.kind === 'wall' ? delayS : 0,
      journalTrouble: watch.journalWrites.trouble ?? (waits > 0 ? 'The journal refuses writes.' : null),
      unrecorded: waits,
      historyTrouble: historyTrouble(store) ?? notWritten(),
      freeBytes: diskFreeBytes,
      diskBytes,
    };
  }
}

function historyTrouble(store: HistoryStore): string | null {
  const { state, message } = store.health();
  return state === 'ok' ? null : (message ?? 'The store gives no reason.');
}
