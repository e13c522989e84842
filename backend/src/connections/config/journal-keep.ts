import type { Fault } from './read-variable';

/** Days for which rows of the journal can be searched where nothing is set: a year and a month. */
const usualDays = 400;
/** A year on line is what records of an alarm system are kept for at least. */
const fewestDays = 365;

/** For how many days rows stay in the journal's file before they are sealed; null: for ever. */
export function readJournalKeep(variable: string, text: string | undefined, faults: Fault[]): number | null {
  if (text === undefined) return usualDays;
  if (text === 'forever') return null;
  const days = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  if (days >= fewestDays) return days;
  faults.push({ variable, message: `must be a whole number of days, ${fewestDays} at least, or forever` });
  return usualDays;
}
