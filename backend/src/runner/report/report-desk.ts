import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { longestReportSeconds } from '@ebbline/shared/contract/report';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { fail, ok } from '@ebbline/shared/errors/result';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { AlarmJournal } from '../../ports/alarm-journal';
import type { EnergyTotals } from '../../ports/energy-totals';
import type { HistoryStore } from '../../ports/history-store';
import type { NoteDesk } from '../../ports/note-desk';
import type { PerformanceDesk } from '../../ports/performance-desk';
import type { ReportDesk, ReportQuery } from '../../ports/report-desk';
import type { TrendDesk } from '../../ports/trend-desk';
import { journalReached } from '../journal-reached';
import { FewAtOnce } from '../past/few-at-once';
import { journalBegan } from '../performance/journal-began';
import { untilOthersRan, type Pause } from '../performance/read-steps';
import { buildReport, type ReportSources } from './build-report';
import { gapsByDay } from './gaps-by-day';
import { missingOf } from './missing-of';
import { readPlant } from './read-plant';
import { waterByHandOf } from './water-by-hand';

export interface ReportDeskParts {
  readonly journal: Pick<AlarmJournal, 'page' | 'standingAt' | 'hand'>;
  readonly store: Pick<HistoryStore, 'read' | 'readSeconds' | 'waitingFromMs'>;
  readonly site: () => CompiledSite;
  /** Time in force, ms; NaN before there is one. */
  readonly nowMs: () => number;
  readonly wallMs: () => number;
  readonly notes: Pick<NoteDesk, 'notes' | 'handovers'>;
  readonly energy: EnergyTotals;
  readonly performance: PerformanceDesk;
  readonly trends: Pick<TrendDesk, 'uncertainty'>;
  /** Changes of alarms that the journal does not have yet. */
  readonly unrecorded: () => number;
  /** When the content of the site file came in force, ms. */
  readonly siteSinceMs: () => number;
  readonly pause?: Pause;
}

/** A sample that is older has no say in how the water is. */
const oldestSampleMs = 400 * 86_400_000;
/** So many rows at most are told of; a flood of a week may have more. */
const mostRows = 50_000;

/** Puts a report together from what the other desks, the journal and history tell. */
export class RunnerReportDesk implements ReportDesk {
  private readonly few = new FewAtOnce(1, 4, 'Many reports are being made at once; ask again in a moment.');

  constructor(private readonly parts: ReportDeskParts) {}

  /** One after another, as each reads history for every unit. */
  report(query: ReportQuery): ReturnType<ReportDesk['report']> {
    return this.few.run(() => this.make(query));
  }

  private async make(query: ReportQuery): ReturnType<ReportDesk['report']> {
    const { hall, fromMs, toMs, madeBy, mayReadAudit } = query;
    const site = this.parts.site();
    const nowMs = this.nowMs();
    if (hall !== null && !site.halls.some(({ id }) => id === hall))
      return fail({ code: 'HALL_UNKNOWN', message: 'The site has no hall of this id; /api/site lists them.' });
    const untilMs = Math.min(toMs, nowMs);
    if (!(toMs > fromMs && toMs - fromMs <= longestReportSeconds * 1000 && untilMs > fromMs))
      return fail({
        code: 'REPORT_PERIOD',
        message: 'A report is of at most 7 days that have begun; give such times.',
      });
    const { journal, store, notes, energy, performance } = this.parts;
    // What happened at this very time is of a shift that still runs.
    const rowsToMs = untilMs < toMs ? untilMs + 1 : untilMs;
    const { rows, more, firstMs } = await this.rowsOf(fromMs, rowsToMs, mayReadAudit);
    const { leftOut, ...plant } = await readPlant(
      { site, hall, fromMs, untilMs },
      { store, uncertaintyAt: (unit, point, atMs) => this.uncertaintyAt(unit, point, atMs) },
    );
    const gaps = await gapsByDay(store, site, { hall, fromMs, untilMs });
    const summed = await energy.report({ unit: null, hall, fromMs, toMs: untilMs, by: 'hour' });
    const figures = await performance.report({ fromMs, toMs: untilMs, hall });
    const noted = notes.notes({ hall, unit: null, fromMs, toMs });
    const sources: ReportSources = {
      ...{ site: site.name, timeZone: site.timeZone, hall, fromMs, toMs, untilMs, madeMs: nowMs, madeBy, rows },
      hallOf: (unit) => site.halls[site.units.find(({ id }) => id === unit)?.hall ?? -1]?.id,
      then: journal.standingAt(untilMs),
      notes: noted.ok ? noted.value.notes : [],
      handovers: notes.handovers({ hall, fromMs, toMs }),
      plant: { ...plant, gaps },
      waterByHand: waterByHandOf(journal.hand(fromMs - oldestSampleMs), unitsOf(site, hall), untilMs),
      energy: summed.ok ? summed.value : null,
      performance: figures.ok ? figures.value : null,
      missing: missingOf({
        ...{ fromMs, toMs, untilMs, firstMs, leftOut, more, mayReadAudit, timeZone: site.timeZone },
        siteSinceMs: this.parts.siteSinceMs(),
        waitingFromMs: store.waitingFromMs?.() ?? Infinity,
        unrecorded: untilMs < toMs || untilMs === nowMs ? this.parts.unrecorded() : 0,
        moreNotes: noted.ok && noted.value.more,
        energy: summed.ok ? null : summed.fault.message,
        performance: figures.ok ? null : figures.fault.message,
      }),
    };
    return ok(buildReport(sources));
  }

  /** A page at a time with a pause between, as the plant is judged meanwhile. */
  private async rowsOf(fromMs: number, toMs: number, audit: boolean) {
    const { journal, pause = untilOthersRan } = this.parts;
    const rows: JournalRow[] = [];
    let after: number | null = 0;
    while (after !== null && rows.length < mostRows) {
      const page = journal.page({ fromMs, toMs, after, audit });
      rows.push(...page.rows);
      after = page.next;
      await pause();
    }
    const firstMs = journalBegan(journal);
    return { rows, more: after !== null, firstMs: Number.isNaN(firstMs) ? null : firstMs };
  }

  private async uncertaintyAt(unit: string, point: string, atMs: number): Promise<number | null> {
    const fromMs = Math.floor(atMs / 1000) * 1000;
    try {
      const done = await this.parts.trends.uncertainty({
        ...{ unit, points: [point], fromMs, toMs: fromMs + 1000, moments: 1 },
      });
      return done.ok ? (done.value.points[0]?.expandedUncertainty[0] ?? null) : null;
    } catch (fault) {
      // It is an addition; what history could not tell of the rest is told there.
      if (fault instanceof CodedError) return null;
      throw fault;
    }
  }

  /** On the source clock there is no time before the first sample: then it is the one that the program before this one had reached. */
  private nowMs(): number {
    const nowMs = this.parts.nowMs();
    if (!Number.isNaN(nowMs)) return Math.floor(nowMs);
    const reachedMs = journalReached(this.parts.journal);
    return Number.isNaN(reachedMs) ? this.parts.wallMs() : reachedMs;
  }
}

const unitsOf = (site: CompiledSite, hall: string | null): readonly string[] =>
  site.halls
    .filter(({ id }) => hall === null || id === hall)
    .flatMap(({ units }) => units.flatMap((at) => site.units[at]?.id ?? []));
