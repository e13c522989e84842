import type { TriedSettings } from '@ebbline/shared/contract/alarm-settings';
import { triedSettingsSchema } from '@ebbline/shared/contract/alarm-settings';

type Query = Readonly<Record<string, unknown>>;

export interface LimitsTarget {
  readonly unit?: string | null;
  /** Values to be tried, in the unit of measure of the entry; the trial is filled with them. */
  readonly propose?: TriedSettings;
  /** Period of the trial, ISO 8601. */
  readonly from?: string;
  readonly to?: string;
}

/** Address of one entry of the alarm list, as a unit has it, and with what is to be tried. */
export const limitsLink = (
  entry: string,
  { unit, propose, from, to }: LimitsTarget = {},
): { name: 'limits'; params: { entry: string }; query: Record<string, string> } => ({
  name: 'limits',
  params: { entry },
  query: {
    ...(unit === undefined || unit === null ? {} : { unit }),
    ...(propose === undefined || Object.keys(propose).length === 0 ? {} : { propose: writeProposal(propose) }),
    ...(from === undefined || to === undefined ? {} : { from, to }),
  },
});

/** `limit:4500,onDelaySeconds:30,reAlarmAfterSeconds:none,enabled:no` */
export const writeProposal = (set: TriedSettings): string =>
  Object.entries(set)
    .map(([member, value]) => `${member}:${wordFor.get(value) ?? String(value)}`)
    .join(',');

const wordFor: ReadonlyMap<unknown, string> = new Map<unknown, string>([
  [true, 'yes'],
  [false, 'no'],
  [null, 'none'],
]);
const valueOf: ReadonlyMap<string, boolean | number | null> = new Map<string, boolean | number | null>([
  ['yes', true],
  ['no', false],
  ['none', null],
  ['', Number.NaN],
]);

/** What an address proposes; null where it proposes nothing that could be meant. */
export function readProposal(query: Query): TriedSettings | null {
  const { propose } = query;
  if (typeof propose !== 'string' || propose === '') return null;
  const given = Object.fromEntries(
    propose.split(',').map((part) => {
      const [member = '', value = ''] = part.split(':');
      const word = valueOf.get(value);
      return [member, word === undefined ? Number(value) : word];
    }),
  );
  const parsed = triedSettingsSchema.safeParse(given);
  return parsed.success ? parsed.data : null;
}
