import { layChanges, type LaidChanges, type RefusedChange } from '../../evaluation/alarm-rules/settings/lay-changes';
import type { SettingRecord } from '../../evaluation/alarm-rules/settings/setting-record';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { SettingLayers } from '../../evaluation/site/setting-layers';

/**
 * What runs: the site file with every change laid over it that was made while running, in the order in which they were made, as far
 * as they fit it.
 */
export class SettingsInForce {
  private readonly made: SettingRecord[];
  private laid: LaidChanges;

  /** @param records changes that the journal holds, oldest first */
  constructor(
    private file: CompiledSite,
    records: readonly SettingRecord[],
  ) {
    this.made = [...records];
    this.laid = layChanges(file, records);
  }

  /** The site as the file has it. */
  site(): CompiledSite {
    return this.file;
  }

  /** The site as it is to run. */
  running(): CompiledSite {
    return this.laid.site;
  }

  /** All that were made, oldest first. */
  records(): readonly SettingRecord[] {
    return this.made;
  }

  /** Those that fit the site file, oldest first. */
  accepted(): readonly SettingRecord[] {
    return this.laid.accepted;
  }

  /** Those that do not fit it, and are not in force. */
  refused(): readonly RefusedChange[] {
    return this.laid.refused;
  }

  changes(): SettingLayers {
    return this.laid.layers;
  }

  add(record: SettingRecord): CompiledSite {
    this.made.push(record);
    this.laid = layChanges(this.file, this.made);
    return this.laid.site;
  }

  /** Another site file: the changes are laid over that one, as far as they fit it. */
  follow(file: CompiledSite): CompiledSite {
    this.file = file;
    this.laid = layChanges(file, this.made);
    return this.laid.site;
  }
}
