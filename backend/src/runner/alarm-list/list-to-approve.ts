import type { AuthorisedEntryInFile, AuthorisedSettings } from '@ebbline/shared/contract/authorised-list';
import type { AlarmSettings } from '@ebbline/shared/contract/alarm-settings';
import { writtenUnit } from '@ebbline/shared/contract/site-file-quantity';
import type { QuantityKind } from '@ebbline/shared/contract/quantity-kind';
import { fromSi, unitsOfMeasureFor } from '@ebbline/shared/units/units-of-measure';
import { entryIds, type EntryId } from '../../evaluation/alarm-rules/entry-ids';
import { alarmClasses } from '../../evaluation/alarm-rules/rationale/alarm-classes';
import { rationaleTable } from '../../evaluation/alarm-rules/rationale/rationale-table';
import type { AuthorisedList } from '../../ports/authorised-list';
import { listedSettings } from './listed-settings';
import { placesOf } from './places';
import type { SettingsInForce } from './settings-in-force';

/** A list as its file has it, but for who approved it and when: that is for a person to write. */
export interface ListToApprove {
  readonly site: string;
  readonly entries: Readonly<Record<string, AuthorisedEntryInFile>>;
}

/**
 * What runs, written as a list that can be approved: at the site, and at halls and units where they differ from it. Owners and
 * reviews are those of the list that was authorised before; a link is that of the last change of the entry, else of that list.
 */
export function listToApprove(settings: SettingsInForce, before: AuthorisedList | null): ListToApprove {
  // Compared with itself, so that only what runs settles which places are told.
  const places = placesOf(settings, null).map((place) => ({ ...place, authorised: place.running }));
  return {
    site: settings.site().id,
    entries: Object.fromEntries(
      entryIds.map((id) => {
        const own = before?.entries.get(id);
        const changed = settings
          .accepted()
          .filter(({ entry, link }) => entry === id && link !== '')
          .at(-1);
        const changeLink = changed?.link ?? own?.changeLink;
        return [
          id,
          {
            owner: own?.owner ?? alarmClasses[rationaleTable[id].class].owner,
            ...(own?.reviewBy === undefined ? {} : { reviewBy: own.reviewBy }),
            ...(changeLink === undefined ? {} : { changeLink }),
            ...settingsByPlace(id, places),
          },
        ];
      }),
    ),
  };
}

function settingsByPlace(
  id: EntryId,
  places: ReturnType<typeof placesOf>,
): Pick<AuthorisedEntryInFile, 'site' | 'halls' | 'units'> {
  const listed = listedSettings(id, places);
  const any = {
    reAlarm: listed.some(({ running }) => running.reAlarmAfterSeconds !== null),
    action: listed.some(({ running }) => running.action !== null),
  };
  if (!rationaleTable[id].setting.changeable && !any.action) return {};
  const written = listed.map(({ scope, running }) => ({ scope, text: writtenSettings(id, running, any) }));
  const of = (kind: 'hall' | 'unit') =>
    Object.fromEntries(written.flatMap(({ scope, text }) => (scope.kind === kind ? [[scope.id, text]] : [])));
  const [halls, units] = [of('hall'), of('unit')];
  const site = written.find(({ scope }) => scope.kind === 'site')?.text;
  return {
    ...(site === undefined ? {} : { site }),
    ...(Object.keys(halls).length === 0 ? {} : { halls }),
    ...(Object.keys(units).length === 0 ? {} : { units }),
  };
}

/** Units of measure in which people speak of a limit, as the site file takes them; of others the first of the table. */
const spoken: Readonly<Partial<Record<QuantityKind, string>>> = {
  pressureDifference: 'kPa',
  ratio: '%',
  freeAirFlow: 'free L/min',
  conductivity: 'uS/cm',
  concentration: 'mg/L',
  volume: 'L',
};

/** @param any what is said of this entry anywhere: there it is said at each place, so that a nearer one does not inherit it */
function writtenSettings(
  id: EntryId,
  settings: AlarmSettings,
  any: { readonly reAlarm: boolean; readonly action: boolean },
): AuthorisedSettings {
  const { limit: quantity, side, deadband, changeable } = rationaleTable[id].setting;
  const seconds = (value: number): string => `${plain(value)} s`;
  const again = settings.reAlarmAfterSeconds;
  const action = any.action ? { action: settings.action } : {};
  if (!changeable) return action;
  return {
    ...(quantity === null
      ? {}
      : {
          limit: inUnit(settings.limit, quantity),
          ...(side === 'band' || side === 'ends' ? { low: inUnit(settings.low, quantity) } : {}),
          ...(deadband ? { deadband: inUnit(settings.deadband, quantity) } : {}),
        }),
    onDelay: seconds(settings.onDelaySeconds),
    offDelay: seconds(settings.offDelaySeconds),
    ...(any.reAlarm ? { reAlarmAfter: again === null ? 'none' : seconds(again) } : {}),
    enabled: settings.enabled,
    ...action,
  };
}

function inUnit(value: number | null, quantity: QuantityKind): string {
  if (value === null) return 'none';
  const name = spoken[quantity] ?? unitsOfMeasureFor(quantity)[0] ?? '1';
  const unit = writtenUnit(name, quantity);
  const number = plain(unit === undefined ? value : fromSi(unit, value));
  return name === '1' ? number : `${number} ${name}`;
}

/** Without the last digits, where the conversion has left its rounding. */
const plain = (value: number): string => String(Number(value.toPrecision(12)));
