/** What a person tells when a branch is to be opened; the unit and the name stand beside it. */
export interface PermitWish {
  readonly branch: string | null;
  /** ISO 8601, UTC */
  readonly until: string;
  /** m³/s of free air */
  readonly expectedInLeak: number;
  readonly comment: string;
}

const litresPerMinute = 60_000;
/** As the contract has it: 1 m³/s of free air at most. */
export const mostInLeak = litresPerMinute;
/** Longer than a day is not a job, it is a state (common practice, no source). min */
export const longestMinutes = 1440;

/** The wish behind a filled form; null while something in it can't be meant. */
export function permitWish(
  form: { branch: string; minutes: number | ''; litresPerMinute: number | ''; comment: string },
  now: string | null,
): PermitWish | null {
  const { minutes, litresPerMinute: litres } = form;
  if (now === null || form.branch === '' || typeof minutes !== 'number' || typeof litres !== 'number') return null;
  if (!(minutes >= 1 && minutes <= longestMinutes) || !(litres >= 0 && litres <= mostInLeak)) return null;
  return {
    branch: form.branch === wholeLoop ? null : form.branch,
    until: new Date(Date.parse(now) + minutes * 60_000).toISOString(),
    expectedInLeak: litres / litresPerMinute,
    comment: form.comment.trim(),
  };
}

/** Choice of the form for a loop that is opened or vented as a whole; ids of branches hold no blank. */
export const wholeLoop = 'whole loop';
