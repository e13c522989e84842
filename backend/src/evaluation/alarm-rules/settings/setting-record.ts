import type { AlarmSettings, ProposedSettings, SettingScope } from '@ebbline/shared/contract/alarm-settings';
import type { EntryLimits } from '../../site/compiled-site';
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
  /** The second person, where the class of the entry asks for one. */
  readonly approvedBy?: string;
  /** What was approved by it: then that waits no more. */
  readonly proposal?: string;
}

/** What came of a change: of a highly managed class it is proposed first, and changed once a second person approved. */
export type SettingStep = 'settingChanged' | 'settingProposed' | 'settingWithdrawn';

/** Settings as a rule is given them: SI, delays in ms. Of what may be null, a nearer place says so that there is none. */
export function limitsOf(set: ProposedSettings): EntryLimits {
  const { limit, low, deadband, onDelaySeconds, offDelaySeconds, reAlarmAfterSeconds, enabled, action } = set;
  return {
    ...(limit === undefined ? {} : { limit }),
    ...(low === undefined ? {} : { low }),
    ...(deadband === undefined ? {} : { deadband }),
    ...(onDelaySeconds === undefined ? {} : { onDelayMs: onDelaySeconds * 1000 }),
    ...(offDelaySeconds === undefined ? {} : { offDelayMs: offDelaySeconds * 1000 }),
    ...(reAlarmAfterSeconds === undefined ? {} : { reAlarmAfterMs: (reAlarmAfterSeconds ?? Infinity) * 1000 }),
    ...(enabled === undefined ? {} : { enabled }),
    ...(action === undefined ? {} : { action: action ?? '' }),
  };
}

/** Changes in layers, to which further ones are added. */
export interface ChangeLayers extends SettingLayers {
  readonly site: Map<string, EntryLimits>;
  readonly halls: Map<string, Map<string, EntryLimits>>;
  readonly units: Map<string, Map<string, EntryLimits>>;
}

export type MadeChange = Pick<SettingRecord, 'entry' | 'scope' | 'set'>;

/** All changes together, in the order in which they were made: of one place and member the last one holds. */
export function layersOfChanges(records: readonly MadeChange[]): ChangeLayers {
  const layers: ChangeLayers = { site: new Map(), halls: new Map(), units: new Map() };
  for (const record of records) addChange(layers, record);
  return layers;
}

/** Lays one more change over those before it. */
export function addChange({ site, halls, units }: ChangeLayers, { entry, scope, set }: MadeChange): void {
  const level = scope.kind === 'site' ? site : within(scope.kind === 'hall' ? halls : units, scope.id);
  level.set(entry, { ...level.get(entry), ...limitsOf(set) });
}

function within(levels: Map<string, Map<string, EntryLimits>>, id: string): Map<string, EntryLimits> {
  const known = levels.get(id) ?? new Map<string, EntryLimits>();
  levels.set(id, known);
  return known;
}
