import { energyPoints, energyQuantities, type EnergyReport, type EnergyStep } from '@ebbline/shared/contract/energy';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { expanded } from '@ebbline/shared/uncertainty/combine';
import { uncertaintyOfReading } from '../../evaluation/derive/standard-uncertainty';
import type { CompiledSite, CompiledUnit, Holder } from '../../evaluation/site/compiled-site';
import type { EnergyFault, EnergyRequest, EnergyTotals } from '../../ports/energy-totals';
import type { HistoryBuckets, HistoryStore } from '../../ports/history-store';
import { addUnit, type PowerSeries, type UnitPowers } from './add-unit';
import { emptyPeriod, overall, toEnergyPeriod } from './energy-sums';
import { localPeriods } from './local-periods';

export interface EnergyParts {
  readonly site: () => CompiledSite;
  readonly store: HistoryStore;
  /** Time in force, ms; NaN before there is one. */
  readonly nowMs: () => number;
}

const mostPeriods = 1500;
const dayMs = 86_400_000;
/** One unit over eleven years, or a hundred units over forty days: minutes that are read stay few enough for a few seconds. */
const mostUnitDays = 4000;

/** Pieces in which history is read. Minute figures are read from 10 minutes on; clocks change by half hours at least. */
const pieceMs: Readonly<Record<EnergyStep, number>> = { hour: 600_000, day: 1_800_000, month: 1_800_000 };

/** Adds up what the history store keeps of the powers of units. One unit is read after the other: a large question stays a small load. */
export class EnergyFromHistory implements EnergyTotals {
  constructor(private readonly parts: EnergyParts) {}

  async report(request: EnergyRequest): Promise<Result<EnergyReport, EnergyFault>> {
    const site = this.parts.site();
    const units = unitsOf(site, request);
    if (!units.ok) return units;
    const { fromMs, toMs, by, unit, hall } = request;
    if (!((units.value.length * (toMs - fromMs)) / dayMs <= mostUnitDays)) return fail(tooMuch);
    const boundaries = localPeriods(fromMs, toMs, by, site.timeZone, mostPeriods);
    if (boundaries === null) return fail(tooMuch);
    const periods = boundaries.slice(1).map((end, i) => emptyPeriod(boundaries[i] ?? end, end));
    const nowMs = this.parts.nowMs();
    for (const one of units.value) {
      const powers = await this.powersOf(site, one, boundaries[0] ?? fromMs, boundaries.at(-1) ?? toMs, pieceMs[by]);
      addUnit(periods, powers, pieceMs[by], Number.isNaN(nowMs) ? Infinity : nowMs);
    }
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

  private async powersOf(
    site: CompiledSite,
    unit: CompiledUnit,
    fromMs: number,
    toMs: number,
    width: number,
  ): Promise<UnitPowers> {
    const holder = site.holders[unit.holder];
    if (holder === undefined) return {};
    const found = await Promise.all(
      energyQuantities.map(async (quantity) => {
        const series = await this.seriesOf(site, holder, energyPoints[quantity], fromMs, toMs, width);
        return series === null ? [] : [[quantity, series] as const];
      }),
    );
    return Object.fromEntries(found.flat());
  }

  private async seriesOf(
    site: CompiledSite,
    holder: Holder,
    point: string,
    fromMs: number,
    toMs: number,
    width: number,
  ): Promise<PowerSeries | null> {
    const read = async (id: string): Promise<HistoryBuckets | null> => {
      const slot = holder.slotOf.get(id);
      if (slot === undefined) return null;
      const unitOfMeasure = site.slots.unitOfMeasure[slot] ?? '1';
      const buckets = Math.round((toMs - fromMs) / width);
      return this.parts.store.read({ holder: holder.id, point: id, unitOfMeasure, fromMs, toMs, buckets });
    };
    const slot = holder.slotOf.get(point) ?? -1;
    const [buckets, kept] = await Promise.all([read(point), read(`${point}Uncertainty`)]);
    if (buckets === null) return null;
    const isMeasured = site.slots.measured[slot] === 1;
    return {
      buckets,
      secondsPerValue: isMeasured ? Math.max(1, (site.slots.periodMs[slot] ?? 1000) / 1000) : 1,
      uncertainty: isMeasured
        ? (piece) => expanded(uncertaintyOfReading(site.slots, slot, buckets.mean[piece] ?? Number.NaN))
        : (piece) => kept?.mean[piece] ?? Number.NaN,
    };
  }
}

const tooMuch: EnergyFault = {
  code: 'ENERGY_RANGE',
  message: `At most ${mostPeriods} periods, and ${mostUnitDays} days of units (100 units over 40 days): ask for less time, a longer step, or one unit.`,
};

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
