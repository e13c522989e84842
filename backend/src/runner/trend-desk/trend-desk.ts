import type { PastUncertainty } from '@ebbline/shared/contract/trends';
import { fail, ok } from '@ebbline/shared/errors/result';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { AlarmJournal } from '../../ports/alarm-journal';
import type { HistoryStore } from '../../ports/history-store';
import type { SpansQuery, TrendDesk, UncertaintyQuery } from '../../ports/trend-desk';
import { FewAtOnce } from '../past/few-at-once';
import { untilOthersRan, type Pause } from '../performance/read-steps';
import { PastUncertainties, type ProbedMoment } from './past-uncertainties';
import { pickMoments } from './pick-moments';
import { readSpans } from './read-spans';

export interface TrendDeskParts {
  readonly journal: Pick<AlarmJournal, 'page' | 'standing'>;
  readonly store: Pick<HistoryStore, 'read' | 'readSeconds'>;
  readonly site: () => CompiledSite;
  /** Time in force, ms; NaN before there is one. */
  readonly nowMs: () => number;
  readonly monotonicMs: () => number;
  readonly pause?: Pause;
}

/** The newest seconds are still on their way into the store. */
const settledMs = 10_000;
/** So many answers at most wait for each other. */
const mostWaiting = 6;
/** So long one answer is worked at beside the judging; what is left is worked out when it is asked for again. */
const workMs = 1500;

/** Reads journal and history for what is drawn beside a trend. */
export class RunnerTrendDesk implements TrendDesk {
  private readonly past: PastUncertainties;
  private turn: Promise<unknown> = Promise.resolve();
  private waiting = 0;
  private readonly few = new FewAtOnce();

  constructor(private readonly parts: TrendDeskParts) {
    this.past = new PastUncertainties(parts.store, parts.pause ?? untilOthersRan);
  }

  async alarmSpans(query: SpansQuery): ReturnType<TrendDesk['alarmSpans']> {
    const unknown = query.units.find((id) => this.unitAt(id) < 0);
    if (unknown !== undefined) return fail(noUnit(unknown));
    const { halls, units } = this.parts.site();
    const ofUnits = new Set(query.units.map((id) => halls[units[this.unitAt(id)]?.hall ?? -1]?.id));
    const concerned = [...ofUnits].filter((id) => id !== undefined);
    return this.few.run(async () =>
      ok(await readSpans(this.parts.journal, { ...query, halls: concerned }, this.parts.pause)),
    );
  }

  async uncertainty(query: UncertaintyQuery): ReturnType<TrendDesk['uncertainty']> {
    const unit = this.unitAt(query.unit);
    if (unit < 0) return fail(noUnit(query.unit));
    const site = this.parts.site();
    const unknown = query.points.find((point) => measureOf(site, unit, point) === null);
    if (unknown !== undefined)
      return fail({
        code: 'POINT_UNKNOWN',
        message: `The unit has no point ${unknown}; /api/units/{unit}/points lists them.`,
      });
    if (this.waiting >= mostWaiting)
      return fail({
        code: 'UNCERTAINTY_BUSY',
        message: 'Others have asked for more than can be worked out at once; ask again in a few seconds.',
      });
    return ok(await this.inTurn(() => this.workOut(site, unit, query)));
  }

  /** One after another: it is work for the thread that judges the plant. */
  private async inTurn<T>(work: () => Promise<T>): Promise<T> {
    this.waiting += 1;
    const mine = this.turn.then(work);
    this.turn = mine.catch(() => undefined);
    try {
      return await mine;
    } finally {
      this.waiting -= 1;
    }
  }

  private async workOut(site: CompiledSite, unit: number, query: UncertaintyQuery): Promise<PastUncertainty> {
    const { monotonicMs, nowMs } = this.parts;
    const settled = Number.isNaN(nowMs()) ? query.toMs : nowMs() - settledMs;
    const moments = pickMoments(query.fromMs, query.toMs, query.moments).filter((atMs) => atMs <= settled);
    const untilMs = monotonicMs() + workMs;
    const probed: (ProbedMoment | null)[] = [];
    let worked = 0;
    for (const atMs of moments) {
      const known = this.past.known(site, unit, atMs, nowMs());
      // One more at least, so that it comes to an end however slow it is.
      if (known === null && (worked === 0 || monotonicMs() < untilMs)) {
        probed.push(await this.past.work(site, unit, atMs, nowMs()));
        worked += 1;
      } else probed.push(known);
    }
    const minutesBeforeMs = Math.max(-Infinity, ...probed.map(minutesBefore));
    return {
      unit: query.unit,
      pending: probed.filter((one) => one === null).length,
      moments: moments.map((atMs) => new Date(atMs).toISOString()),
      points: query.points.map((point) => ({
        point,
        unit_of_measure: measureOf(site, unit, point) ?? '1',
        expandedUncertainty: probed.map((one) => one?.uncertainties.get(point) ?? null),
      })),
      minutesBefore: Number.isFinite(minutesBeforeMs) ? new Date(minutesBeforeMs).toISOString() : null,
    };
  }

  private unitAt(id: string): number {
    return this.parts.site().units.findIndex((unit) => unit.id === id);
  }
}

const minutesBefore = (one: ProbedMoment | null): number =>
  one?.minutesOnly === true ? one.minutesBeforeMs : -Infinity;

const noUnit = (id: string) =>
  ({ code: 'UNIT_UNKNOWN', message: `The site has no unit ${id}; /api/units lists them.` }) as const;

/** Unit of measure of a point of a unit or its hall; null where there is none. */
function measureOf(site: CompiledSite, unitIndex: number, point: string): string | null {
  const unit = site.units[unitIndex];
  for (const holder of [unit?.holder ?? -1, site.halls[unit?.hall ?? -1]?.holder ?? -1]) {
    const slot = site.holders[holder]?.slotOf.get(point);
    if (slot !== undefined) return site.slots.unitOfMeasure[slot] ?? '1';
  }
  return null;
}
