import { fail, ok } from '@ebbline/shared/errors/result';
import { AlarmHistory } from '../../evaluation/alarm-performance/alarm-history';
import { figures } from '../../evaluation/alarm-performance/figures/figures';
import { judgeFigure, type JudgedFigure } from '../../evaluation/alarm-performance/judge-figure';
import type { PerformanceTargets } from '../../evaluation/alarm-performance/targets';
import { toldIn, type Told } from '../../evaluation/alarm-performance/told';
import { configuredAlarms } from '../../evaluation/pipeline/configured-alarms';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { AlarmJournal } from '../../ports/alarm-journal';
import type { PerformanceDesk, PerformanceQuery } from '../../ports/performance-desk';
import { FewAtOnce } from '../past/few-at-once';
import { readSteps, untilOthersRan, type Pause } from './read-steps';
import { toPerformance, type Proposed } from './to-performance';

const usualPeriodMs = 30 * 86_400_000;

export interface PerformanceParts {
  readonly journal: Pick<AlarmJournal, 'steps' | 'standing'>;
  /** When the journal was begun, by the clock in force, as far as its rows are at hand, ms; NaN where no row says so. */
  readonly beganMs: () => number;
  readonly site: () => CompiledSite;
  /** Time in force, ms; NaN before there is one. */
  readonly nowMs: () => number;
  /** In place of the time in force where there is none yet. */
  readonly wallMs: () => number;
  readonly targets: PerformanceTargets;
  /** What could be set instead, for alarms that chatter and for those gone too soon. */
  readonly propose: (told: Told) => Promise<Proposed>;
  readonly pause?: Pause;
}

/** Reckons the figures anew each time, from the rows of the journal alone. */
export class JournalPerformanceDesk implements PerformanceDesk {
  private counted: { readonly site: CompiledSite; readonly of: ReadonlyMap<string | null, number> } | null = null;

  private readonly few = new FewAtOnce(1, 8, 'Many ask for the performance of alarms at once; ask again in a moment.');

  constructor(private readonly parts: PerformanceParts) {}

  /** One after another, as each reads the journal on the thread of the judge and holds the rows of a period in memory. */
  report(query: PerformanceQuery): ReturnType<PerformanceDesk['report']> {
    return this.few.run(() => this.reckon(query));
  }

  private async reckon({ fromMs, toMs, hall }: PerformanceQuery): ReturnType<PerformanceDesk['report']> {
    const { journal, site, targets, propose, pause = untilOthersRan } = this.parts;
    if (hall !== null && !site().halls.some(({ id }) => id === hall))
      return fail({ code: 'HALL_UNKNOWN', message: 'The site has no hall of this id; /api/site lists them.' });
    const untilMs = Math.min(toMs ?? Number.POSITIVE_INFINITY, this.nowMs());
    const sinceMs = fromMs ?? untilMs - usualPeriodMs;
    if (!(untilMs > sinceMs))
      return fail({ code: 'QUERY_MALFORMED', message: 'to: must be later than from. See /api/openapi.json.' });
    const history = new AlarmHistory(hall);
    // Without an end all that is on record: what happens at this very time is of it.
    await readSteps(journal, toMs, (step) => history.take(step), pause);
    // What came before the first row that is at hand, and has had none since, stands all the same.
    for (const record of journal.standing()) if (record.sinceMs < untilMs) history.stood(record);
    history.end();
    // What was before the first row nobody knows, nor what is to come: means over it would look calmer than it was.
    const known = [history.firstMs, this.parts.beganMs()].filter((ms) => !Number.isNaN(ms));
    const knownMs = Math.min(untilMs, ...known);
    const period = { fromMs: Math.max(sinceMs, knownMs), toMs: untilMs };
    const told = toldIn(history, period, this.configured(hall));
    const judged: JudgedFigure[] = [];
    for (const row of figures) {
      judged.push(judgeFigure(row, told, targets));
      await pause();
    }
    return ok(toPerformance(told, hall, judged, await propose(told)));
  }

  private nowMs(): number {
    const nowMs = this.parts.nowMs();
    return Number.isNaN(nowMs) ? this.parts.wallMs() : nowMs;
  }

  private configured(hall: string | null): number {
    const site = this.parts.site();
    if (this.counted?.site !== site) this.counted = { site, of: configuredAlarms(site) };
    const counts = this.counted.of;
    return hall === null ? [...counts.values()].reduce((sum, count) => sum + count, 0) : (counts.get(hall) ?? 0);
  }
}
