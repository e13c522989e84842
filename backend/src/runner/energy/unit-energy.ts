import type { EnergyStep } from '@ebbline/shared/contract/energy';
import type { CompiledSite, Holder } from '../../evaluation/site/compiled-site';
import type { DayToKeep, KeptEnergy } from '../../ports/kept-energy';
import { addMeasured } from './add-unit';
import { hourEdges, type Day } from './days-and-hours';
import { emptyPeriod, type PeriodSum } from './energy-sums';
import { addRow, rowLength, sumOfRows, toRow } from './sum-row';
import { readPowers, recipeOf } from './unit-powers';
import type { WatchedHistory } from './watched-history';

export interface EnergySources {
  readonly store: WatchedHistory;
  readonly kept: KeptEnergy;
}

export interface Question {
  readonly site: CompiledSite;
  readonly by: EnergyStep;
  /** In order, without a hole between them. */
  readonly periods: readonly PeriodSum[];
  readonly nowMs: number;
  /** Whether it has taken as long as it may. */
  readonly isLate: () => boolean;
}

/** Pieces in which history is read: minute figures are read from 10 minutes on, and clocks change by half hours at least. */
const pieceMs = 600_000;
/** Days that are read at once. */
const daysAtOnce = 31;

/** Adds what is kept of a unit's days to the periods; gives the other days, those that have not begun left out. */
export function addKept(question: Question, { kept }: EnergySources, holder: Holder, days: readonly Day[]): Day[] {
  const { site, by, periods, nowMs } = question;
  const [fromMs, toMs] = [days[0]?.startMs ?? 0, days.at(-1)?.endMs ?? 0];
  const of = by === 'hour' ? 'hours' : 'day';
  const found = new Map(
    kept.read(of, holder.id, recipeOf(site, holder), fromMs, toMs).map((one) => [one.startMs, one]),
  );
  return days.filter((day) => {
    const one = found.get(day.startMs);
    const edges = of === 'day' ? [day.startMs, day.endMs] : hourEdges(day, site.timeZone);
    if (one?.endMs !== day.endMs || one.sums.length !== (edges.length - 1) * rowLength) return day.startMs < nowMs;
    edges.slice(0, -1).forEach((startMs, hour) => {
      const period = periodAt(periods, startMs);
      if (period !== undefined) addRow(period, one.sums, hour);
    });
    return false;
  });
}

/**
 * Adds days of a unit from history, some at once, and keeps those that are over. Gives how many days it came to before it was late:
 * what is kept by then need not be read again.
 */
export async function addFromHistory(
  question: Question,
  sources: EnergySources,
  holder: Holder,
  days: readonly Day[],
): Promise<number> {
  let done = 0;
  for (const run of runsOf(days, sources.store.overUntilMs(holder.id))) {
    if (question.isLate()) return done;
    await addRun(question, sources, holder, run);
    done += run.length;
  }
  return done;
}

async function addRun(question: Question, sources: EnergySources, holder: Holder, run: readonly Day[]): Promise<void> {
  const { store, kept } = sources;
  const { site, periods } = question;
  const [overMs, version] = [store.overUntilMs(holder.id), store.version(holder.id)];
  const isOver = run.every(({ endMs }) => endMs <= overMs);
  const from = periods[0]?.startMs ?? 0;
  const to = periods.at(-1)?.endMs ?? 0;
  // What can't be kept is read no further than it is asked.
  const hoursOf = (day: Day): readonly PeriodSum[] =>
    pairs(hourEdges(day, site.timeZone))
      .filter(([start, end]) => isOver || (start < to && end > from))
      .map(([start, end]) => emptyPeriod(start, end));
  const hours = run.map(hoursOf);
  const all = hours.flat();
  const [fromMs, toMs] = [all[0]?.startMs ?? 0, all.at(-1)?.endMs ?? 0];
  if (!(toMs > fromMs)) return;
  addMeasured(all, await readPowers(store, site, holder, { fromMs, toMs, pieceMs }), pieceMs, question.nowMs);
  const rows = hours.map((ofDay) => Float64Array.from(ofDay.flatMap(toRow)));
  hours.forEach((ofDay, day) =>
    ofDay.forEach(({ startMs }, hour) => {
      const period = periodAt(periods, startMs);
      if (period !== undefined) addRow(period, rows[day] ?? new Float64Array(), hour);
    }),
  );
  if (!isOver || store.version(holder.id) !== version) return;
  const toKeep = run.map((day, i): DayToKeep => {
    const ofDay = rows[i] ?? new Float64Array();
    return { ...day, day: sumOfRows(ofDay), hours: ofDay };
  });
  kept.keep(holder.id, recipeOf(site, holder), toKeep);
}

/** Days that follow on each other and are over, or are not, alike; no more than are read at once. */
function runsOf(days: readonly Day[], overMs: number): readonly (readonly Day[])[] {
  const runs: Day[][] = [];
  for (const day of days) {
    const run = runs.at(-1);
    const before = run?.at(-1);
    const isNext = before?.endMs === day.startMs && before.endMs <= overMs === day.endMs <= overMs;
    if (run !== undefined && isNext && run.length < daysAtOnce) run.push(day);
    else runs.push([day]);
  }
  return runs;
}

const pairs = (edges: readonly number[]): readonly (readonly [number, number])[] =>
  edges.slice(1).map((end, i) => [edges[i] ?? end, end] as const);

/** The period that holds an instant. */
function periodAt(periods: readonly PeriodSum[], ms: number): PeriodSum | undefined {
  let [low, high] = [0, periods.length];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((periods[middle]?.startMs ?? Infinity) <= ms) low = middle;
    else high = middle;
  }
  const found = periods[low];
  return found !== undefined && found.startMs <= ms && ms < found.endMs ? found : undefined;
}
