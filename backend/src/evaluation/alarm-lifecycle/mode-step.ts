import type { AlarmMode } from '@ebbline/shared/contract/alarm-modes';
import { modeTable, type ModeEvent, type RefusalOfMode } from './mode-table';

export type ModeStep =
  | { readonly ok: true; readonly mode: AlarmMode; readonly changed: boolean }
  | { readonly ok: false; readonly refusal: RefusalOfMode };

/**
 * The next mode of an alarm; does nothing itself.
 * @param suppressed whether logic suppresses the alarm now: then what a person brings back is still not told
 */
export function modeStep(mode: AlarmMode, event: ModeEvent, suppressed: boolean): ModeStep {
  const cell = modeTable[mode][event];
  if ('refuse' in cell) return { ok: false, refusal: cell.refuse };
  if ('back' in cell) return { ok: true, mode: suppressed ? 'suppressedByDesign' : 'inService', changed: true };
  return { ok: true, mode: cell.to, changed: cell.to !== mode };
}
