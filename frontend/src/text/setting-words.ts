import type { AlarmSettings } from '@ebbline/shared/contract/alarm-settings';

export type SettingMember = keyof AlarmSettings;
export const settingMembers = [
  'limit',
  'low',
  'deadband',
  'onDelaySeconds',
  'offDelaySeconds',
  'reAlarmAfterSeconds',
  'enabled',
  'action',
] as const satisfies readonly SettingMember[];

export const settingWords: { readonly [M in SettingMember]: string } = {
  limit: 'limit',
  low: 'lower end of the band',
  deadband: 'deadband',
  onDelaySeconds: 'raised after',
  offDelaySeconds: 'cleared after',
  reAlarmAfterSeconds: 'told again after',
  enabled: 'in use',
  action: 'first action of the site',
};

/** What is said of a member that has nothing: a number by itself says `none`. */
export const absentWords: { readonly [M in SettingMember]?: string } = {
  reAlarmAfterSeconds: 'not told again',
  action: 'that of the catalogue',
};

/** What a limit is, by the side on which the alarm stands. */
export const sideWords = {
  above: 'limit, told above it',
  below: 'limit, told below it',
  band: 'upper end of the band',
  ends: 'upper end, of its second thing',
} as const;

export const isSettingMember = (name: string): name is SettingMember =>
  (settingMembers as readonly string[]).includes(name);

/** A member as an audit names it; what is none of them stays as it is. */
export const sayMember = (name: string): string => (isSettingMember(name) ? settingWords[name] : name);

export const severityWords = {
  severe: 'severe: many servers down, or water out',
  major: 'major: one rack, or redundancy lost',
  minor: 'minor: cost of maintenance',
} as const;

export const severities = ['severe', 'major', 'minor'] as const;

export const judgedWords = {
  unit: 'for each unit',
  branch: 'for each branch',
  plate: 'for each plate',
  loop: 'for each loop',
  hall: 'for each hall',
  point: 'for each measured point',
  gateway: 'for each gateway',
  program: 'for this program',
} as const;

export const alarmTypeWords = {
  absolute: 'a value against a limit',
  deviation: 'a value against what was expected',
  rate: 'how fast a value moves',
  discrete: 'yes or no',
  instrument: 'whether a sensor can be believed',
  calculated: 'worked out from several values',
} as const;

export const shapeTitles = {
  a: 'supply tank, separator and transfer pump',
  b: 'two tanks in turn',
  c: 'pump and vacuum reservoir',
} as const;
