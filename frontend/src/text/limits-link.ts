import type { ProposedSettings } from '@ebbline/shared/contract/alarm-settings';
import { proposedSettingsSchema } from '@ebbline/shared/contract/alarm-settings';

type Query = Readonly<Record<string, unknown>>;

export interface LimitsTarget {
  readonly unit?: string | null;
  /** Values to be tried, in the unit of measure of the entry; the trial is filled with them. */
  readonly propose?: ProposedSettings;
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

/** `limit:4500,onDelaySeconds:30,enabled:no` */
export const writeProposal = (set: ProposedSettings): string =>
  Object.entries(set)
    .map(([member, value]) => `${member}:${typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value)}`)
    .join(',');

/** What an address proposes; null where it proposes nothing that could be meant. */
export function readProposal(query: Query): ProposedSettings | null {
  const { propose } = query;
  if (typeof propose !== 'string' || propose === '') return null;
  const given = Object.fromEntries(
    propose.split(',').map((part) => {
      const [member = '', value = ''] = part.split(':');
      return [member, value === 'yes' ? true : value === 'no' ? false : value === '' ? Number.NaN : Number(value)];
    }),
  );
  const parsed = proposedSettingsSchema.safeParse(given);
  return parsed.success ? parsed.data : null;
}
