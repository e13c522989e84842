import type { HealthFinding } from '@ebbline/shared/contract/health-reasons';
import type { RefusedChange } from '../../evaluation/alarm-rules/settings/lay-changes';
import type { SettingRecord } from '../../evaluation/alarm-rules/settings/setting-record';
import type { SettingsInForce } from './settings-in-force';
import type { ToldOfChange } from './told-of-changes';

export interface RefusedChangesParts {
  readonly settings: SettingsInForce;
  /** Puts a line into the journal; false where it refuses: then it is tried again. */
  readonly record: (cause: ToldOfChange['cause'], reason: string) => boolean;
  /** What the journal was told before this start, oldest first; left out: nothing. */
  readonly toldBefore?: readonly ToldOfChange[];
}

/** What no later change of the same place could put right, since there is no such place or no such setting any more. */
const gone: ReadonlySet<RefusedChange['fault']['code']> = new Set([
  'SETTING_ENTRY_UNKNOWN',
  'SETTING_SCOPE_UNKNOWN',
  'SETTING_SCOPE',
  'SETTING_FIXED',
  'SETTING_ABSENT',
]);

/** Tells the journal of changes that a site file leaves behind, and of those that fit it again; and health, while that lasts. */
export class RefusedChanges {
  private readonly told = new Map<string, { readonly record: SettingRecord; readonly message: string }>();

  constructor(private readonly parts: RefusedChangesParts) {
    const { settings, toldBefore = [] } = parts;
    for (const record of settings.records()) {
      const last = toldBefore.filter(({ reason }) => reason.startsWith(`${said(record)} `)).at(-1);
      // Told by the program before this one: a restart is no news of it.
      if (last?.cause === 'settingRefused')
        this.told.set(record.id, { record, message: last.reason.slice(`${said(record)}${notInForce}`.length) });
    }
  }

  /** To be called whenever changes were laid over a site file, the same or another; what the journal did not take is tried again. */
  look(): void {
    const { record: tell, settings } = this.parts;
    const refused = new Map(settings.refused().map((one) => [one.record.id, one]));
    for (const [id, { record, fault }] of refused) {
      if (this.told.get(id)?.message === fault.message) continue;
      if (tell('settingRefused', `${said(record)}${notInForce}${fault.message}`))
        this.told.set(id, { record, message: fault.message });
    }
    for (const [id, { record }] of this.told) {
      if (refused.has(id)) continue;
      const how = settings.accepted().includes(record) ? 'fits the site file again' : 'was followed by a later one';
      if (tell('settingFits', `${said(record)} ${how}.`)) this.told.delete(id);
    }
  }

  /** Of those that a person can put right by setting the place anew. */
  reasons(): readonly HealthFinding[] {
    const refused = this.parts.settings.refused().filter(({ fault }) => !gone.has(fault.code));
    const [first] = refused;
    if (first === undefined) return [];
    const more = refused.length === 1 ? '' : ` (and ${refused.length - 1} more)`;
    return [{ code: 'SETTINGS_REFUSED', message: `${said(first.record)}${notInForce}${first.fault.message}${more}` }];
  }
}

const notInForce = ' is not in force: ';

function said({ atMs, entry, operator, scope }: SettingRecord): string {
  const where = scope.kind === 'site' ? 'the site' : `${scope.kind} ${scope.id}`;
  return `The change of ${entry} for ${where} by ${operator} at ${new Date(atMs).toISOString()}`;
}
