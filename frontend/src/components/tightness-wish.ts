import type { StartTightnessRequest } from '@ebbline/shared/contract/tightness-test';

/** What the form for a pressure-rise test holds, as typed. */
export interface TightnessForm {
  readonly minutes: number | '';
  readonly limitLitres: number | '';
  readonly dry: boolean;
  readonly sourceIsolated: boolean;
  readonly gasLitres: number | '';
  readonly comment: string;
}

export const shortestTestMinutes = 5;
export const longestTestMinutes = 1440;
const litresPerMinute = 60_000;
/** As the contract has it: 0.1 m³/s of free air, 1000 m³ of gas. */
const mostLimitLitres = 0.1 * litresPerMinute;
const mostGasLitres = 1_000_000;

/** The wish behind a filled form, without the name; null while something in it can't be meant. */
export function tightnessWish(form: TightnessForm): Omit<StartTightnessRequest, 'operator'> | null {
  const { minutes, limitLitres: limit, gasLitres: gas } = form;
  if (typeof minutes !== 'number' || !(minutes >= shortestTestMinutes && minutes <= longestTestMinutes)) return null;
  if (typeof limit !== 'number' || !(limit > 0 && limit <= mostLimitLitres)) return null;
  if (typeof gas === 'number' && !(gas > 0 && gas <= mostGasLitres)) return null;
  return {
    plannedMinutes: minutes,
    acceptanceLimit: limit / litresPerMinute,
    dry: form.dry,
    sourceIsolated: form.sourceIsolated,
    gasVolume: typeof gas === 'number' ? gas / 1000 : null,
    comment: form.comment.trim(),
  };
}
