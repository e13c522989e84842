import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { catalogue } from '../../evaluation/alarm-rules/catalogue/catalogue';
import { entryIds } from '../../evaluation/alarm-rules/entry-ids';

const seconds = 's';

/** Name of a setting, and its unit of measure; null: that of the entry. */
const members: readonly (readonly [key: string, name: string, unit: string | null])[] = [
  ['limit', 'limit', null],
  ['low', 'low end', null],
  ['deadband', 'deadband', null],
  ['onDelaySeconds', 'on-delay', seconds],
  ['offDelaySeconds', 'off-delay', seconds],
  ['reAlarmAfterSeconds', 'told again after', seconds],
  ['enabled', 'judged', ''],
  ['action', 'first action', ''],
];

/** What of an alarm was set from what to what, for which part of the site, and why. */
export function settingText({ entry, reason, facts }: JournalRow): string {
  const setting = facts?.setting;
  if (setting === undefined) return `Setting of ${entry ?? 'an alarm'} changed: ${reason ?? ''}`;
  const { scope } = setting;
  const [old, now] = [setting.old, setting.new].map((one) => one as Readonly<Record<string, unknown>>);
  const of = scope.kind === 'site' ? 'the site' : `${scope.kind} ${scope.id}`;
  const changed = members
    .filter(([key]) => old?.[key] !== now?.[key])
    .map(([key, name, unit]) => `${name} ${wordOf(old?.[key])} → ${wordOf(now?.[key])}${unitText(unit, entry)}`);
  return `${entry ?? ''} for ${of}: ${changed.join(', ')}${reason === null ? '' : `. ${reason}`}`;
}

function unitText(unit: string | null, entry: string | null): string {
  const known = entryIds.find((id) => id === entry);
  const text = unit ?? (known === undefined ? '' : (catalogue[known].unitOfMeasure ?? ''));
  return text === '' || text === '1' ? '' : ` ${text}`;
}

function wordOf(value: unknown): string {
  if (value === null || value === undefined) return 'none';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return String(Number(value.toPrecision(6)));
  return typeof value === 'string' ? `“${value}”` : JSON.stringify(value);
}
