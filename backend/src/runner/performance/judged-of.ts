import { pointPattern } from '@ebbline/shared/contract/point-table';
import type { Annunciation } from '../../evaluation/alarm-performance/annunciation';
import { catalogue } from '../../evaluation/alarm-rules/catalogue/catalogue';
import { entryIds } from '../../evaluation/alarm-rules/entry-ids';
import { lineTable } from '../../evaluation/alarm-rules/limit-lines/line-table';
import { resolveLimits, type ResolvedLimits } from '../../evaluation/alarm-rules/resolve-limits';
import type { CompiledSite, CompiledUnit } from '../../evaluation/site/compiled-site';

/** The recorded point beside which the limit of an alarm stands, on the scale of the limit. */
export interface JudgedLine {
  readonly holder: string;
  readonly point: string;
  readonly unitOfMeasure: string;
  readonly side: 'above' | 'below';
  readonly limit: number;
}

/** By what an alarm is judged now. */
export interface Judged {
  readonly limits: ResolvedLimits;
  readonly unitOfMeasure: string | null;
  readonly timeToRespondMs: number;
  /** Null where no one recorded point is held against one limit. */
  readonly line: JudgedLine | null;
}

/** Null where the catalogue has no such entry any more. */
export function judgedOf(site: CompiledSite, alarm: string, told: Annunciation | undefined): Judged | null {
  const entry = entryIds.find((id) => id === told?.entry);
  if (entry === undefined) return null;
  const { defaults, unitOfMeasure, timeToRespondS } = catalogue[entry];
  const unit = site.units.find(({ id }) => id === told?.unit);
  const limits = resolveLimits(defaults, unit?.limits.get(entry));
  const line = unit === undefined ? null : lineOf(site, unit, entry, limits, alarm);
  return { limits, unitOfMeasure, timeToRespondMs: timeToRespondS * 1000, line };
}

function lineOf(
  site: CompiledSite,
  unit: CompiledUnit,
  entry: (typeof entryIds)[number],
  limits: ResolvedLimits,
  alarm: string,
): JudgedLine | null {
  const rows = Object.entries(lineTable).find(([id]) => id === entry)?.[1] ?? [];
  const [row, second] = rows;
  const holder = site.holders[unit.holder];
  // Two lines: the journal does not say which of them was crossed.
  if (row === undefined || second !== undefined || holder === undefined) return null;
  // Where a unit tells its set point, the limit moved with it while the rows were written: then there is no one limit.
  const setPointC = holder.slotOf.has('supply.setPoint') ? Number.NaN : (unit.design.supplySetPointC ?? Number.NaN);
  const limit = row.at(limits, unit, setPointC);
  const perUnit = row.at({ ...limits, limit: limits.limit + 1 }, unit, setPointC) - limit;
  // A limit that is told as a share stands on another scale than its deadband.
  if (Number.isNaN(limit) || Math.abs(Math.abs(perUnit) - 1) > 1e-6) return null;
  const part = alarm.split(':')[2];
  const point = [...holder.slotOf.keys()].find(
    (id) => pointPattern(id) === row.point && (part === undefined || id.split('.').includes(part)),
  );
  const slot = point === undefined ? undefined : holder.slotOf.get(point);
  if (point === undefined || slot === undefined) return null;
  const unitOfMeasure = site.slots.unitOfMeasure[slot] ?? '1';
  return { holder: holder.id, point, unitOfMeasure, side: row.side, limit };
}
