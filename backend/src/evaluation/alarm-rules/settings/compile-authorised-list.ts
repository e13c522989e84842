import { checkAuthorisedList, type AuthorisedSettings } from '@ebbline/shared/contract/authorised-list';
import type { SettingScope } from '@ebbline/shared/contract/alarm-settings';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { compileLevel, entriesWithBand, type CatalogueEntries } from '../../site/compile-limits';
import type { CompiledSite, EntryLimits } from '../../site/compiled-site';
import { FaultList, type FaultPath, type SiteFault } from '../../site/site-fault';
import type { SettingLayers } from '../../site/setting-layers';
import type { EntryId } from '../entry-ids';
import { isEntryId, rationaleTable } from '../rationale/rationale-table';
import { checkAuthorisedSense, type AuthorisedPlace } from './check-authorised-sense';
import { scopesAuthorised } from './scopes-of';

export interface CompiledAuthorisedList {
  readonly version: string;
  readonly approvedBy: string;
  readonly approvedOn: string;
  readonly layers: SettingLayers;
  readonly entries: ReadonlyMap<
    string,
    {
      readonly owner: string | undefined;
      readonly reviewBy: string | undefined;
      readonly changeLink: string | undefined;
    }
  >;
}

/**
 * A parsed list of authorised alarms → its settings in layers, SI; or all that is wrong with it at once: shape, entries and places
 * that are not there, units of measure, and settings with which an alarm could never tell or never clear.
 */
export function compileAuthorisedList(
  document: unknown,
  site: CompiledSite,
  quantities: CatalogueEntries,
): Result<CompiledAuthorisedList, readonly SiteFault[]> {
  const shape = checkAuthorisedList(document);
  if (!shape.ok) return shape;
  const list = shape.value;
  const faults = new FaultList();
  if (list.site !== site.id)
    faults.add(
      ['site'],
      `this list is of "${list.site}", and the site file of "${site.id}"; name the list of this site`,
    );

  const layers = { site: new Map(), halls: new Map(), units: new Map() } satisfies Layers;
  const places: AuthorisedPlace[] = [];
  for (const [id, { site: everywhere, halls = {}, units = {} }] of Object.entries(list.entries)) {
    if (!isEntryId(id)) {
      faults.add(['entries', id], `the catalogue has no entry "${id}"; known are ${[...quantities.keys()].join(', ')}`);
      continue;
    }
    const at = (scope: SettingScope, path: FaultPath, written: AuthorisedSettings): void => {
      const refused = placeFault(id, scope, site, written);
      if (refused !== null) {
        faults.add(path, refused);
        return;
      }
      const limits = compiled(id, written, path);
      if (limits === null) return;
      levelOf(layers, scope).set(id, limits);
      places.push({ entry: id, scope, path });
    };
    const compiled = (entry: EntryId, written: AuthorisedSettings, path: FaultPath): EntryLimits | null => {
      const { rest, none } = withoutNone(entry, written);
      const level = compileLevel(
        { limits: { [entry]: rest }, at: (_, ...keys) => [...path, ...keys] },
        quantities,
        faults,
      );
      const limits = level.get(entry) ?? null;
      return limits === null ? null : { ...limits, ...none };
    };
    if (everywhere !== undefined) at({ kind: 'site' }, ['entries', id, 'site'], everywhere);
    for (const [hall, written] of Object.entries(halls))
      at({ kind: 'hall', id: hall }, ['entries', id, 'halls', hall], written);
    for (const [unit, written] of Object.entries(units))
      at({ kind: 'unit', id: unit }, ['entries', id, 'units', unit], written);
  }
  if (faults.size === 0) checkAuthorisedSense(layers, places, site, faults);
  if (faults.size > 0) return fail(faults.list);
  const { version, approvedBy, approvedOn } = list;
  const entries = new Map(
    Object.entries(list.entries).map(([id, { owner, reviewBy, changeLink }]) => [id, { owner, reviewBy, changeLink }]),
  );
  return ok({ version, approvedBy, approvedOn, layers, entries });
}

interface Layers {
  readonly site: Map<string, EntryLimits>;
  readonly halls: Map<string, Map<string, EntryLimits>>;
  readonly units: Map<string, Map<string, EntryLimits>>;
}

function levelOf({ site, halls, units }: Layers, scope: SettingScope): Map<string, EntryLimits> {
  if (scope.kind === 'site') return site;
  const levels = scope.kind === 'hall' ? halls : units;
  const level = levels.get(scope.id) ?? new Map<string, EntryLimits>();
  levels.set(scope.id, level);
  return level;
}

function placeFault(id: EntryId, scope: SettingScope, site: CompiledSite, written: AuthorisedSettings): string | null {
  if (!rationaleTable[id].setting.changeable && Object.keys(written).some((key) => key !== 'action'))
    return `${id} is judged by rules of the program itself, which no setting reaches; take out all but its action`;
  if (scope.kind === 'site') return null;
  if (!scopesAuthorised(id).includes(scope.kind)) return `${id} spans units; set it for the site or a hall`;
  const known = scope.kind === 'hall' ? site.halls : site.units;
  return known.some((one) => one.id === scope.id)
    ? null
    : `the site has no ${scope.kind} "${scope.id}"; take it out of the list, or correct its id`;
}

/** `none` is no quantity: it says that an entry has no such thing here, whatever lies around it. No action: that of the catalogue. */
function withoutNone(id: EntryId, written: AuthorisedSettings) {
  const { limit, low, reAlarmAfter, action, ...rest } = written;
  const noReAlarm = reAlarmAfter === 'none';
  const noLimit = limit === 'none' && rationaleTable[id].setting.limit !== null;
  const noLow = low === 'none' && entriesWithBand.has(id);
  return {
    rest: {
      ...rest,
      ...(limit === undefined || noLimit ? {} : { limit }),
      ...(low === undefined || noLow ? {} : { low }),
      ...(reAlarmAfter === undefined || noReAlarm ? {} : { reAlarmAfter }),
      ...(action === undefined || action === null ? {} : { action }),
    },
    none: {
      ...(noLimit ? { limit: Number.NaN } : {}),
      ...(noLow ? { low: Number.NaN } : {}),
      ...(noReAlarm ? { reAlarmAfterMs: Infinity } : {}),
      ...(action === null ? { action: '' } : {}),
    },
  };
}
