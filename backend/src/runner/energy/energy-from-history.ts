import { setImmediate as otherWork } from 'node:timers/promises';
import type { EnergyReport } from '@ebbline/shared/contract/energy';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { CompiledSite, CompiledUnit, Holder } from '../../evaluation/site/compiled-site';
import type { EnergyFault, EnergyRequest, EnergyTotals } from '../../ports/energy-totals';
import { addWanted } from './add-unit';
import { coveringHours, localDays, type Day } from './days-and-hours';
import { emptyPeriod, overall, toEnergyPeriod } from './energy-sums';
import { localPeriods } from './local-periods';
import { addFromHistory, addKept, type EnergySources, type Question } from './unit-energy';
import { quantitiesOf } from './unit-powers';

export interface EnergyParts extends EnergySources {
  readonly site: () => CompiledSite;
  /** Time in force, ms; NaN before there is one. */
  readonly nowMs: () => number;
  readonly monotonicMs: () => number;
}

const dayMs = 86_400_000;
/** A year of hours. */
const mostPeriods = 8_800;
/** Eleven years: the calendar is worked out at once, and history's minutes go back two. */
const mostDays = 4_000;
/** 1,000 units over a year, by days or months; 100 units by hours. */
const mostUnitDays = { hour: 40_000, day: 400_000, month: 400_000 } as const;
/** Longest that one question reads history, ms: what it then has is kept, and the next one goes on from there. */
const longestMs = 12_000;

/**
 * Adds up the powers of units. Days that are over are added up once and kept hour by hour; what is not kept is read from history, one
 * unit after the other, so that a large question stays a small load and other work comes in between.
 */
export class EnergyFromHistory implements EnergyTotals {
  constructor(private readonly parts: EnergyParts) {}

  async report(request: EnergyRequest): Promise<Result<EnergyReport, EnergyFault>> {
    const site = this.parts.site();
    const units = unitsOf(site, request);
    if (!units.ok) return units;
    const { fromMs, toMs, by, unit, hall } = request;
    const most = mostUnitDays[by];
    const asked = (toMs - fromMs) / dayMs;
    if (!(asked <= mostDays && units.value.length * asked <= most)) return fail(tooMuch(most));
    const calendar = calendarOf(request, site.timeZone);
    if (calendar === null) return fail(tooMuch(most));
    const { boundaries, days } = calendar;
    const periods = boundaries.slice(1).map((end, i) => emptyPeriod(boundaries[i] ?? end, end));
    const endMs = this.parts.monotonicMs() + longestMs;
    const [now, isLate] = [this.parts.nowMs(), () => this.parts.monotonicMs() >= endMs];
    const question: Question = { site, by, periods, nowMs: Number.isNaN(now) ? Infinity : now, isLate };
    const left = await this.addAll(question, holdersOf(site, units.value), days);
    if (left > 0) return fail(notYet(left, units.value.length * days.length));
    const total = toEnergyPeriod(overall(periods));
    return ok({
      hall,
      unit,
      units: units.value.map(({ id }) => id),
      timeZone: site.timeZone,
      by,
      from: total.start,
      to: total.end,
      periods: periods.map(toEnergyPeriod),
      total,
    });
  }

  /** Days that can be kept come first, of all units, so that each question gets further than the one before. Gives what is left. */
  private async addAll(question: Question, holders: readonly Holder[], days: readonly Day[]): Promise<number> {
    const open: [Holder, readonly Day[]][] = [];
    let left = 0;
    for (const holder of holders) {
      await otherWork();
      const overMs = this.parts.store.overUntilMs(holder.id);
      addWanted(question.periods, quantitiesOf(holder), question.nowMs);
      const missing = addKept(question, this.parts, holder, days);
      const over = missing.filter(({ endMs }) => endMs <= overMs);
      open.push([holder, missing.filter(({ endMs }) => endMs > overMs)]);
      left += over.length - (await addFromHistory(question, this.parts, holder, over));
    }
    for (const [holder, running] of open)
      left += running.length - (await addFromHistory(question, this.parts, holder, running));
    return left;
  }
}

function calendarOf(
  { fromMs, toMs, by }: EnergyRequest,
  timeZone: string,
): { readonly boundaries: readonly number[]; readonly days: readonly Day[] } | null {
  const asked = by === 'hour' ? null : localPeriods(fromMs, toMs, by, timeZone, mostPeriods);
  if (by !== 'hour' && asked === null) return null;
  if (by === 'hour' && toMs - fromMs > mostPeriods * 3_600_000) return null;
  const days = localDays(asked?.[0] ?? fromMs, asked?.at(-1) ?? toMs, timeZone, mostUnitDays[by]);
  if (days === null) return null;
  return { boundaries: asked ?? coveringHours(days, fromMs, toMs, timeZone), days };
}

const holdersOf = (site: CompiledSite, units: readonly CompiledUnit[]): readonly Holder[] =>
  units.flatMap((unit) => site.holders[unit.holder] ?? []);

const tooMuch = (most: number): EnergyFault => ({
  code: 'ENERGY_RANGE',
  message: `At most ${mostDays} days, ${mostPeriods} periods, and ${most} days of units (${most / 400} units over 400 days): ask for less time, a longer step, a hall or one unit.`,
});

const notYet = (left: number, all: number): EnergyFault => ({
  code: 'ENERGY_NOT_YET',
  message: `Of ${all} days of units ${left} are not added up yet. Ask again: it goes on from there. Or ask for less time, or one unit; days that still run are read each time, so let the time end at a midnight that has passed.`,
});

function unitsOf(site: CompiledSite, { unit, hall }: EnergyRequest): Result<readonly CompiledUnit[], EnergyFault> {
  if (unit !== null) {
    const one = site.units.find(({ id }) => id === unit);
    if (one !== undefined) return ok([one]);
    return fail({ code: 'UNIT_UNKNOWN', message: 'The site has no unit of this id; /api/units lists them.' });
  }
  if (hall === null) return ok(site.units);
  const index = site.halls.findIndex(({ id }) => id === hall);
  if (index >= 0) return ok(site.units.filter((one) => one.hall === index));
  return fail({ code: 'HALL_UNKNOWN', message: 'The site has no hall of this id; /api/site lists them.' });
}
