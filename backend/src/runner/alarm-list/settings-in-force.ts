import { layersOfChanges, type SettingRecord } from '../../evaluation/alarm-rules/settings/setting-record';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import { withSettings, type SettingLayers } from '../../evaluation/site/setting-layers';

/** What runs: the site file with every change laid over it that was made while running, in the order in which they were made. */
export class SettingsInForce {
  private readonly made: SettingRecord[];
  private layers: SettingLayers;
  private laid: CompiledSite;

  /** @param records changes that the journal holds, oldest first */
  constructor(
    private file: CompiledSite,
    records: readonly SettingRecord[],
  ) {
    this.made = [...records];
    this.layers = layersOfChanges(records);
    this.laid = withSettings(file, this.layers);
  }

  /** The site as the file has it. */
  site(): CompiledSite {
    return this.file;
  }

  /** The site as it is to run. */
  running(): CompiledSite {
    return this.laid;
  }

  /** Oldest first. */
  records(): readonly SettingRecord[] {
    return this.made;
  }

  changes(): SettingLayers {
    return this.layers;
  }

  /** The site as it would run with one more change. */
  with(change: Pick<SettingRecord, 'entry' | 'scope' | 'set'>): CompiledSite {
    return withSettings(this.file, layersOfChanges([...this.made, change]));
  }

  add(record: SettingRecord): CompiledSite {
    this.made.push(record);
    this.layers = layersOfChanges(this.made);
    this.laid = withSettings(this.file, this.layers);
    return this.laid;
  }

  /** Another site file: the changes are laid over that one, as far as it has the places. */
  follow(file: CompiledSite): CompiledSite {
    this.file = file;
    this.laid = withSettings(file, this.layers);
    return this.laid;
  }
}
