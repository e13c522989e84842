import type { CompiledSite } from '../../site/compiled-site';
import { withSettings, type SettingLayers } from '../../site/setting-layers';
import { checkChange, type ChangeFault } from './check-change';
import { addChange, layersOfChanges, type SettingRecord } from './setting-record';
import { settingMembers } from './to-settings';

/** A change on record that does not fit the site as it is now, and why. */
export interface RefusedChange {
  readonly record: SettingRecord;
  readonly fault: ChangeFault;
}

export interface LaidChanges {
  /** The site as it is to run. */
  readonly site: CompiledSite;
  readonly layers: SettingLayers;
  /** In force, or followed by a later one; oldest first. */
  readonly accepted: readonly SettingRecord[];
  /** Not in force, and followed by no later one that says the same of the same place. */
  readonly refused: readonly RefusedChange[];
}

/**
 * Lays changes over a site file in the order in which they were made, each looked at as if it were asked for now: what made sense
 * with the file of then may make none with this one. What is added at the end never turns what was said of those before it.
 */
export function layChanges(file: CompiledSite, records: readonly SettingRecord[]): LaidChanges {
  const layers = layersOfChanges([]);
  const accepted: SettingRecord[] = [];
  const refused: RefusedChange[] = [];
  for (const record of records) {
    const checked = checkChange(file, layers, record);
    if (checked.ok || checked.fault.code === 'SETTING_UNCHANGED') {
      addChange(layers, record);
      accepted.push(record);
    } else refused.push({ record, fault: checked.fault });
  }
  const places = records.map(({ scope }) => (scope.kind === 'site' ? 'site' : `${scope.kind} ${scope.id}`));
  const isAccepted = new Set(accepted);
  const isFollowed = ({ record }: RefusedChange): boolean => {
    const at = records.indexOf(record);
    const later = records.filter(
      (one, i) => i > at && isAccepted.has(one) && one.entry === record.entry && places[i] === places[at],
    );
    return settingMembers.every(
      (member) => record.set[member] === undefined || later.some(({ set }) => set[member] !== undefined),
    );
  };
  return {
    site: withSettings(file, layers),
    layers,
    accepted,
    refused: refused.filter((one) => !isFollowed(one)),
  };
}
