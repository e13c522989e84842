import type { SiteFile } from '@ebbline/shared/contract/site-file';
import type { LimitsInFile } from '@ebbline/shared/contract/site-file-limits';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { Alike } from './alike';
import { checkBands } from './check-bands';
import { planGateways } from './compile-gateways';
import { compileLevel, type CatalogueEntries } from './compile-limits';
import { planLoops } from './compile-loops';
import { compileSlots } from './compile-slots';
import { compileSubscriptions } from './compile-subscriptions';
import { compileTopics } from './compile-topics';
import { compileUnit, siteAltitudeM } from './compile-unit';
import type { CompiledSite, Holder, SlotTable } from './compiled-site';
import type { LimitsAt } from './compiled-unit';
import { PathReader } from './fill-in';
import { mergeTemplates } from './merge-templates';
import { planHalls, planUnit } from './plan-holders';
import { siOr } from './read-quantities';
import type { FaultList, FaultPath } from './site-fault';
import { WantedPointsCache } from './wanted-points';

export interface CompileOptions {
  readonly derivedPointIds: { readonly hall: readonly string[]; readonly unit: readonly string[] };
  /** Catalogue entries with the quantity of their limit; null: any id and any unit of measure is taken. */
  readonly entries: CatalogueEntries | null;
}

const defaultMaximumPayloadBytes = 65_536;
const defaultFutureToleranceS = 10;
const defaultOldestSampleS = 7 * 86_400;
/** Dwellings lie between the Dead Sea shore and 5,100 m; data halls do too. */
const altitudeRangeM = { minimum: -430, maximum: 5100 };

function checkHead({ site }: SiteFile, altitudeM: number, faults: FaultList): void {
  if (!(altitudeM >= altitudeRangeM.minimum && altitudeM <= altitudeRangeM.maximum))
    faults.add(['site', 'altitude'], `expected ${altitudeRangeM.minimum} m to ${altitudeRangeM.maximum} m`);
  try {
    new Intl.DateTimeFormat('en', { timeZone: site.timeZone });
  } catch {
    faults.add(['site', 'timeZone'], 'this time zone is not known; expected an IANA name such as Europe/Oslo or UTC');
  }
}

function measuredSlots(holder: Holder | undefined, { measured }: SlotTable): readonly number[] {
  if (holder === undefined) return [];
  const found: number[] = [];
  for (let slot = holder.firstSlot; slot < holder.firstSlot + holder.slotCount; slot += 1)
    if (measured[slot] === 1) found.push(slot);
  return found;
}

/** A document of the right shape → slots; what does not fit together is added to `faults`. */
export function compileChecked(
  file: SiteFile,
  { derivedPointIds, entries }: CompileOptions,
  faults: FaultList,
  warnings: FaultList,
): CompiledSite {
  const altitudeM = siteAltitudeM(file.site.altitude);
  checkHead(file, altitudeM, faults);
  const merged = mergeTemplates(file, faults);
  const hallIds = Object.keys(file.halls);
  for (const id of hallIds)
    if (file.units[id] !== undefined)
      faults.add(['units', id], 'a hall has this id already; halls and units need ids of their own');
  if (merged.length === 0) faults.add(['units'], 'there is no unit; give at least one');

  const caches = { wanted: new WantedPointsCache(), paths: new PathReader() };
  const hallPlans = planHalls(file, derivedPointIds.hall, caches, faults);
  const plans = [...hallPlans, ...merged.map((unit) => planUnit(file, unit, derivedPointIds.unit, caches, faults))];
  const { holders, slots } = compileSlots(plans);
  const gateways = planGateways(file, merged, faults);
  const topics = compileTopics(plans, holders, gateways.statuses, faults);
  const loops = planLoops(file, merged, faults, warnings);
  const levelOf = (limits: LimitsInFile | undefined, at: (...keys: readonly string[]) => FaultPath): LimitsAt =>
    compileLevel({ limits, at }, entries, faults);
  const limitsOfSite = levelOf(file.limits, (...keys) => ['limits', ...keys]);
  const limitsOfHalls = hallIds.map((id) =>
    levelOf(file.halls[id]?.limits, (...keys) => ['halls', id, 'limits', ...keys]),
  );

  const alike = new Alike();
  const units = merged.map((one, i) => {
    const holder = hallIds.length + i;
    const hall = hallIds.indexOf(one.unit.hall);
    if (hall < 0)
      faults.add(['units', one.id, 'hall'], `there is no hall "${one.unit.hall}"; known are ${hallIds.join(', ')}`);
    const own = levelOf(one.unit.limits, (...keys) => one.at('limits', ...keys));
    const levels = { site: limitsOfSite, hall: limitsOfHalls[hall] ?? new Map(), unit: own };
    const compiledHolder = holders[holder];
    if (compiledHolder === undefined) throw new CodedError('SITE_HOLDER_LOST', `unit ${one.id} got no holder`);
    const gateway = gateways.ofUnit[i] ?? 0;
    const measured = plans[holder]?.measured ?? [];
    const unit = compileUnit(
      one,
      { hall, holder, gateway, loop: loops.ofUnit[i] ?? i, altitudeM, compiledHolder, measured, levels },
      faults,
      warnings,
    );
    const { design, nodes, vacuumSource } = unit;
    return {
      ...unit,
      design: alike.once(design),
      nodes: alike.once(nodes),
      vacuumSource: alike.once(vacuumSource),
    };
  });

  checkBands(units, holders, warnings);
  const unitsOfGateway = new Map<number, number[]>();
  units.forEach(({ gateway }, i) => {
    const own = unitsOfGateway.get(gateway);
    if (own === undefined) unitsOfGateway.set(gateway, [i]);
    else own.push(i);
  });

  return {
    id: file.site.id,
    name: file.site.name,
    timeZone: file.site.timeZone,
    altitudeM,
    demo: file.site.demo ?? false,
    maximumPayloadBytes: file.intake?.maximumPayloadBytes ?? defaultMaximumPayloadBytes,
    futureToleranceMs: 1000 * siOr(file.intake?.futureTolerance, 'duration', defaultFutureToleranceS),
    oldestSampleMs: 1000 * siOr(file.intake?.oldestSample, 'duration', defaultOldestSampleS),
    holders,
    halls: hallIds.map((id, h) => {
      const slot = (point: string): number => holders[h]?.slotOf.get(point) ?? -1;
      return {
        id,
        name: file.halls[id]?.name ?? id,
        holder: h,
        units: units.flatMap((unit, i) => (unit.hall === h ? [i] : [])),
        slot: {
          ambientPressure: slot('ambient.pressure'),
          temperature: slot('hall.temperature'),
          humidity: slot('hall.humidity'),
          dewPoint: slot('dewPoint'),
        },
      };
    }),
    units,
    loops: loops.loops,
    gateways: gateways.ids.map((id, g) => {
      const own = unitsOfGateway.get(g) ?? [];
      return {
        id,
        units: own,
        slots: Int32Array.from(own.flatMap((i) => measuredSlots(holders[hallIds.length + i], slots))),
      };
    }),
    slots,
    topics,
    subscriptions: compileSubscriptions(file.intake?.subscriptions ?? [], topics.keys(), faults),
  };
}
