import { longestShelvingMinutes } from '@ebbline/shared/contract/alarm-modes';

/** For how long an alarm is usually shelved: a quarter of an hour to a shift (common practice, no source). min */
export const shelvingChoices: readonly number[] = [15, 30, 60, 120, 240, longestShelvingMinutes];

/** What a reason has to be at least, to be one. Characters, as the contract has it. */
export const shortestReason = 3;

export const isReason = (text: string): boolean => text.trim().length >= shortestReason;

/** `30 min`, `4 h` */
export const sayMinutes = (minutes: number): string =>
  minutes % 60 === 0 ? `${minutes / 60}\u00a0h` : `${minutes}\u00a0min`;

/** What is wished of shelving; null while something in it can't be meant. @param longest min */
export function shelvingWish(
  form: { reason: string; minutes: number | '' },
  longest = longestShelvingMinutes,
): { reason: string; minutes: number } | null {
  const { reason, minutes } = form;
  if (typeof minutes !== 'number' || !Number.isInteger(minutes)) return null;
  if (minutes < 1 || minutes > longest || !isReason(reason)) return null;
  return { reason: reason.trim(), minutes };
}

/** What is wished of taking an alarm out of service. */
export interface OutOfServiceWish {
  readonly reason: string;
  readonly interimMeasures: string;
  /** ISO 8601, UTC */
  readonly plannedEnd: string | null;
}
