import type { AlarmSettings, ProposedSettings, SettingScope } from '@ebbline/shared/contract/alarm-settings';
import type { EntryLimits } from '../../site/compiled-site';
import type { LimitsAt } from '../../site/compiled-unit';
import type { SettingLayers } from '../../site/setting-layers';

/** One change of a setting while the program ran, as the journal keeps it. */
export interface SettingRecord {
  readonly id: string;
  readonly atMs: number;
  readonly entry: string;
  readonly scope: SettingScope;
  /** What was to differ. */
  readonly set: ProposedSettings;
  readonly old: AlarmSettings;
  readonly new: AlarmSettings;
  readonly reason: string;
  /** Where it was approved. */
  readonly link: string;
  readonly operator: string;
  readonly station: string;
}

/** Settings as a rule is given them: SI, delays in ms. */
export function limitsOf(set: ProposedSettings): EntryLimits {
  const { limit, low, deadband, onDelaySeconds, offDelaySeconds, enabled } = set;
  return {
    ...(limit === undefined ? {} : { limit }),
    ...(low === undefined ? {} : { low }),
    ...(deadband === undefined ? {} : { deadband }),
    ...(onDelaySeconds === undefined ? {} : { onDelayMs: onDelaySeconds * 1000 }),
    ...(offDelaySeconds === undefined ? {} : { offDelayMs: offDelaySeconds * 1000 }),
    ...(enabled === undefined ? {} : { enabled }),
  };
}

/** All changes together, in the order in which they were made: of one place and member the last one holds. */
export function layersOfChanges(records: readonly Pick<SettingRecord, 'entry' | 'scope' | 'set'>[]): SettingLayers {
  const site = new Map<string, EntryLimits>();
  const halls = new Map<string, Map<string, EntryLimits>>();
  const units = new Map<string, Map<string, EntryLimits>>();
  for (const { entry, scope, set } of records) {
    const level = scope.kind === 'site' ? site : within(scope.kind === 'hall' ? halls : units, scope.id);
    level.set(entry, { ...level.get(entry), ...limitsOf(set) });
  }
  return { site, halls, units } satisfies Record<keyof SettingLayers, LimitsAt | ReadonlyMap<string, LimitsAt>>;
}

function within(levels: Map<string, Map<string, EntryLimits>>, id: string): Map<string, EntryLimits> {
  const known = levels.get(id) ?? new Map<string, EntryLimits>();
  levels.set(id, known);
  return known;
}
