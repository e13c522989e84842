/**
 * Days from 1970-01-01 to a date of the proleptic Gregorian calendar (ISO 8601); month 1 … 12. Counts
 * years from 1 March, so that the leap day is the last of its year (a well-known method; checked in the
 * tests against the calendar of the JavaScript engine).
 */
export function daysFromCivil(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

const lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

export function daysInMonth(year: number, month: number): number {
  if (month === 2 && year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)) return 29;
  return lengths[month - 1] ?? 0;
}

/** Start of a day of the Gregorian calendar, written as RFC 3339 `full-date`, in UTC: ms since 1970; NaN where it is no such day. */
export function dayStartMs(text: string): number {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) return Number.NaN;
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return Number.NaN;
  return daysFromCivil(year, month, day) * 86_400_000;
}
