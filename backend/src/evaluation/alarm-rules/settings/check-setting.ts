import type { AlarmSettings, ProposedSettings } from '@ebbline/shared/contract/alarm-settings';
import type { QuantityKind } from '@ebbline/shared/contract/quantity-kind';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { EntryId } from '../entry-ids';
import { rationaleTable, unitOfSetting } from '../rationale/rationale-table';
import { differingMembers } from './to-settings';

/** Why a setting is not taken. Stable. */
export type SettingFaultCode =
  | 'SETTING_FIXED'
  | 'SETTING_ABSENT'
  | 'SETTING_RANGE'
  | 'SETTING_BAND'
  | 'SETTING_DEADBAND'
  | 'SETTING_UNCHANGED'
  | 'SETTING_UNIT_OF_MEASURE';

export interface SettingFault<Code extends string = SettingFaultCode> {
  readonly code: Code;
  readonly message: string;
}

interface Numbers {
  readonly limit?: number | null | undefined;
  readonly low?: number | null | undefined;
}

/** What a number of each quantity may lie between at all, in the unit of measure of the entry; what is left out is 0 or more. */
const ranges: Readonly<Partial<Record<QuantityKind, readonly [least: number, most: number]>>> = {
  pressureDifference: [-101_325, 101_325],
  temperatureDifference: [-100, 100],
  ph: [0, 14],
};

/**
 * The settings after a change, or why it is nonsense. In the unit of measure of the entry; nothing is said of whether the
 * numbers are wise.
 */
export function checkSetting(
  id: EntryId,
  old: AlarmSettings,
  set: ProposedSettings,
  unitOfMeasure?: string | null,
): Result<AlarmSettings, SettingFault> {
  const { setting } = rationaleTable[id];
  const fault = (code: SettingFaultCode, message: string): Result<AlarmSettings, SettingFault> =>
    fail({ code, message });
  if (!setting.changeable)
    return fault(
      'SETTING_FIXED',
      `${id} is judged by rules of the program itself; none of its settings can be changed.`,
    );
  if (setting.limit === null && (set.limit !== undefined || set.low !== undefined || set.deadband !== undefined))
    return fault('SETTING_ABSENT', `${id} has no limit of its own; leave out limit, low and deadband.`);
  if (set.deadband !== undefined && !setting.deadband)
    return fault('SETTING_ABSENT', `${id} has no deadband, as its rule looks at none; leave it out.`);
  if (set.low !== undefined && setting.side !== 'band' && setting.side !== 'ends')
    return fault('SETTING_ABSENT', `${id} has no band; leave out low and set the limit.`);
  const unit = unitOfSetting(id);
  if (unitOfMeasure !== undefined && unitOfMeasure !== unit)
    return fault(
      'SETTING_UNIT_OF_MEASURE',
      `${id} is set in ${unit ?? 'nothing: it has no limit'}; convert the numbers.`,
    );
  const now: AlarmSettings = { ...old, ...(set as Partial<AlarmSettings>) };
  const outside = outOfRange(id, set) ?? crossing(id, now);
  if (outside !== null) return fail(outside);
  if (differingMembers(old, now).length === 0)
    return fault('SETTING_UNCHANGED', `${id} is set so already; nothing was changed.`);
  return ok(now);
}

/** With which settings an alarm could never tell, never clear, or would always stand; null: with these it is none of it. */
export const senseFault = (id: EntryId, settings: AlarmSettings): SettingFault | null =>
  outOfRange(id, settings) ?? crossing(id, settings);

function outOfRange(id: EntryId, { limit, low }: Numbers): SettingFault | null {
  const quantity = rationaleTable[id].setting.limit;
  const [least, most] = (quantity === null ? undefined : ranges[quantity]) ?? [0, Number.MAX_VALUE];
  for (const value of [limit, low])
    if (value !== undefined && value !== null && !(value >= least && value <= most)) {
      const range = most === Number.MAX_VALUE ? `${least} or more` : `${least} to ${most}`;
      return { code: 'SETTING_RANGE', message: `${id}: expected ${range}.` };
    }
  return null;
}

/** Ends of a band in the wrong order, or a deadband from which the alarm could never clear. */
function crossing(id: EntryId, { limit, low, deadband }: AlarmSettings): SettingFault | null {
  const { side, sound } = rationaleTable[id].setting;
  if (side === 'band' && limit !== null && low !== null) {
    if (low >= limit) return { code: 'SETTING_BAND', message: `${id}: expected low below limit.` };
    if (low + deadband > limit - deadband)
      return {
        code: 'SETTING_DEADBAND',
        message: `${id}: the deadband takes all of the band; the alarm would not clear.`,
      };
  }
  if (limit === null || sound === null) return null;
  const [beyond, never] =
    side === 'above' ? [limit <= sound, limit - deadband < sound] : [limit >= sound, limit + deadband > sound];
  if (beyond)
    return {
      code: 'SETTING_RANGE',
      message: `${id}: a sound plant reads ${sound}, so that the alarm would always stand; expected a limit ${side === 'above' ? 'above' : 'below'} it.`,
    };
  return never
    ? {
        code: 'SETTING_DEADBAND',
        message: `${id}: with this deadband the value would have to come past ${sound}, what a sound plant reads; the alarm would not clear.`,
      }
    : null;
}
