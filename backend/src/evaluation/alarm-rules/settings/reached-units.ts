import type { SettingScope } from '@ebbline/shared/contract/alarm-settings';
import type { CompiledSite, CompiledUnit, EntryLimits } from '../../site/compiled-site';
import { entryLimitsAt, layersOfSite, type Place, type SettingLayers } from '../../site/setting-layers';
import type { EntryId } from '../entry-ids';
import type { SettingFault, SettingFaultCode } from './check-setting';
import { senseFault } from './check-setting';
import { layersOfChanges, type MadeChange } from './setting-record';
import { differingMembers, toSettings } from './to-settings';
import { stepsCross, stepsOf } from './two-steps';

/**
 * What is wrong at the first unit at which a change would make nonsense of an entry: there its band, its deadband or the order of
 * two steps may be another one than where the change is asked for. What is nonsense by the site file alone, and is not touched, is
 * none of the change.
 */
export function faultAtReached(
  site: CompiledSite,
  changes: SettingLayers,
  change: MadeChange & { readonly entry: EntryId },
): SettingFault<SettingFaultCode | 'SETTING_STEPS'> | null {
  const { entry, scope, set } = change;
  const before = [layersOfSite(site), changes];
  const after = [...before, layersOfChanges([change])];
  const setsNumber = set.limit !== undefined || set.low !== undefined || set.deadband !== undefined;
  const alike = new Set<number>();
  for (const unit of unitsIn(site, scope)) {
    // Units without a word of their own are all as their hall is: one of them is enough.
    if (!hasOwn(before, unit, entry)) {
      if (scope.kind !== 'unit' && alike.has(unit.hall)) continue;
      alike.add(unit.hall);
    }
    const at = (sources: readonly SettingLayers[]) => limitsOfSteps(sources, site, unit, entry);
    const [was, becomes] = [at(before), at(after)];
    const same = differingMembers(toSettings(entry, was.get(entry)), toSettings(entry, becomes.get(entry)));
    if (same.length === 0) continue;
    const fault = faultOf(entry, becomes);
    if (fault === null || (!setsNumber && faultOf(entry, was) !== null)) continue;
    return { code: fault.code, message: `At unit ${unit.id}, which this reaches: ${fault.message}` };
  }
  return null;
}

type Limits = ReadonlyMap<string, EntryLimits>;

function faultOf(entry: EntryId, limits: Limits): SettingFault<SettingFaultCode | 'SETTING_STEPS'> | null {
  const nonsense = senseFault(entry, toSettings(entry, limits.get(entry)));
  if (nonsense !== null) return nonsense;
  const crossed = stepsCross(entry, limits);
  return crossed === null ? null : { code: 'SETTING_STEPS', message: crossed };
}

function limitsOfSteps(
  sources: readonly SettingLayers[],
  site: CompiledSite,
  unit: CompiledUnit,
  entry: EntryId,
): Limits {
  const place: Place = { hall: site.halls[unit.hall]?.id ?? null, unit: unit.id };
  const bands = unit.limitLevels?.bands ?? new Map<string, EntryLimits>();
  return new Map(
    stepsOf(entry).flatMap((id) => {
      const said = entryLimitsAt(sources, bands, place, id);
      return said === undefined ? [] : [[id, said] as const];
    }),
  );
}

const hasOwn = (sources: readonly SettingLayers[], { id, limitLevels }: CompiledUnit, entry: EntryId): boolean =>
  stepsOf(entry).some(
    (step) =>
      limitLevels === undefined ||
      limitLevels.bands.has(step) ||
      sources.some(({ units }) => units.get(id)?.has(step) === true),
  );

function unitsIn({ halls, units }: CompiledSite, scope: SettingScope): readonly CompiledUnit[] {
  if (scope.kind === 'site') return units;
  if (scope.kind === 'unit') return units.filter(({ id }) => id === scope.id);
  return units.filter(({ hall }) => halls[hall]?.id === scope.id);
}
