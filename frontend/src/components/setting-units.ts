import type { AlarmSettings, ProposedSettings } from '@ebbline/shared/contract/alarm-settings';
import type { DisplayUnit } from '../text/display-unit';
import { differenceUnit, displayUnitOf, displayUnitOfUcum, quantityOfUnit } from '../text/display-unit';
import { formatDuration } from '../text/format-age';
import { formatNumber } from '../text/format-number';
import { toTyped } from '../text/shown-unit';
import type { SettingMember } from '../text/setting-words';
import { absentWords, isSettingMember, settingMembers, settingWords } from '../text/setting-words';
import { isOfFreeAir, plainDisplay } from './alarm-facts';

const kelvins = (): DisplayUnit => displayUnitOf('temperatureDifference', 0);
const aboveWhat: { readonly [entry: string]: string } = {
  'FAC-2': 'above its design figure',
  'TSUP-1': 'above its set point',
  'TSUP-2': 'above its class limit',
};
const share = (of: string): DisplayUnit => ({ unit: `% of ${of}`, factor: 100, decimals: 0 });

/** Entries whose limit is set as a distance or a share, though the alarm shows the temperature or flow itself. */
const setOtherwise: { readonly [entry: string]: DisplayUnit } = {
  'FAC-1': share('what flowed before'),
  'FLOW-2': share('the rated flow'),
  'INS-2': share('what the barometer does'),
  'XFER-1': { unit: '× what is usual', factor: 1, decimals: 2 },
};
const lengths = [
  { from: 2 * 86_400, unit: 'd', factor: 1 / 86_400 },
  { from: 2 * 3600, unit: 'h', factor: 1 / 3600 },
  { from: 120, unit: 'min', factor: 1 / 60 },
] as const;
const seconds: DisplayUnit = { unit: 's', factor: 1, decimals: 0 };
const bare: DisplayUnit = { unit: '', factor: 1, decimals: 2 };

/** What is set of one entry: its id, the UCUM code of limits, and the limit by which a length of time is written. */
export interface SettingsOf {
  readonly entry: string;
  readonly unit_of_measure: string | null;
  readonly limit: number | null;
}

export type NumberMember = Exclude<SettingMember, 'enabled' | 'action'>;

const isDelay = (member: SettingMember): boolean =>
  member === 'onDelaySeconds' || member === 'offDelaySeconds' || member === 'reAlarmAfterSeconds';

/** In which unit a member is read and typed. */
export function settingUnit({ entry, unit_of_measure: ucum, limit }: SettingsOf, member: NumberMember): DisplayUnit {
  if (isDelay(member)) return seconds;
  const display = limitUnit(entry, ucum, limit);
  if (member !== 'deadband') return display;
  if (aboveWhat[entry] !== undefined) return kelvins();
  return ucum === 'Cel' ? differenceUnit('temperature', 0) : display;
}

function limitUnit(entry: string, ucum: string | null, limit: number | null): DisplayUnit {
  const above = aboveWhat[entry];
  if (above !== undefined) return { ...kelvins(), unit: `${kelvins().unit} ${above}` };
  const special = setOtherwise[entry] ?? (ucum === '1' ? plainDisplay(entry) : undefined);
  if (special !== undefined) return special;
  if (ucum === null || ucum === '1') return bare;
  if (ucum === 's') {
    const length = lengths.find(({ from }) => Math.abs(limit ?? 0) >= from);
    return length === undefined ? seconds : { ...length, decimals: 1 };
  }
  if (ucum === 'm3/s' && isOfFreeAir(entry)) return displayUnitOf('freeAirFlow', 0);
  const quantity = quantityOfUnit(ucum);
  return displayUnitOfUcum(ucum) ?? (quantity === undefined ? { ...bare, unit: ucum } : displayUnitOf(quantity, 0));
}

function plainNumber(value: number): string {
  const decimals = String(value).split('.')[1]?.length ?? 0;
  return formatNumber(value, Math.min(6, decimals));
}

/** One member with its unit: `5 kPa`, `30 s`, `yes`; null where the entry has none. */
export function saySetting(of: SettingsOf, member: SettingMember, settings: AlarmSettings): string | null {
  if (member === 'enabled') return settings.enabled ? 'yes' : 'no';
  if (member === 'action') return settings.action === null ? null : `“${settings.action}”`;
  const value = settings[member];
  if (value === null) return null;
  if (isDelay(member)) return sayDelay(value);
  const unit = settingUnit(of, member);
  return `${plainNumber(toTyped(value, unit))}${unit.unit === '' ? '' : `\u00a0${unit.unit}`}`;
}

/** The same, with words for what the entry has not. */
export const saySettingOrNone = (of: SettingsOf, member: SettingMember, settings: AlarmSettings): string =>
  saySetting(of, member, settings) ?? absentWords[member] ?? 'none';

/** A delay as it is, in the largest unit that leaves it whole. */
export function sayDelay(delaySeconds: number): string {
  const whole = formatDuration(delaySeconds);
  const unit = lengths.find(({ unit: one }) => whole.endsWith(one));
  return unit !== undefined && Number.isInteger(toTyped(delaySeconds, unit))
    ? whole
    : `${plainNumber(delaySeconds)}\u00a0s`;
}

/** A proposal in words: `deadband 1.2 kPa, raised after 30 s`. */
export function sayProposal(of: Omit<SettingsOf, 'limit'>, set: ProposedSettings): string {
  const limit = set.limit ?? null;
  const known: AlarmSettings = {
    limit,
    low: set.low ?? null,
    deadband: set.deadband ?? 0,
    onDelaySeconds: set.onDelaySeconds ?? 0,
    offDelaySeconds: set.offDelaySeconds ?? 0,
    reAlarmAfterSeconds: set.reAlarmAfterSeconds ?? null,
    enabled: set.enabled ?? true,
    action: set.action ?? null,
  };
  return settingMembers
    .filter((member) => set[member] !== undefined)
    .map((member) => `${settingWords[member]} ${saySettingOrNone({ ...of, limit }, member, known)}`)
    .join(', ');
}

/** A value that an audit names with its member alone. */
export function saySettingValue(of: SettingsOf, member: string, value: number | boolean | string | null): string {
  if (value === null) return (isSettingMember(member) ? absentWords[member] : undefined) ?? 'none';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return `“${value}”`;
  return isSettingMember(member)
    ? saySettingOrNone(of, member, { ...noSettings, [member]: value })
    : plainNumber(value);
}

const noSettings: AlarmSettings = {
  limit: null,
  low: null,
  deadband: 0,
  onDelaySeconds: 0,
  offDelaySeconds: 0,
  reAlarmAfterSeconds: null,
  enabled: true,
  action: null,
};
