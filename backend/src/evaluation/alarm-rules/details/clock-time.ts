/** The furthest that a date can lie from 1970, ms (ECMA-262, time values). */
const furthestMs = 8.64e15;
const notKnown = 'a time not known';

const isDate = (ms: number): boolean => Math.abs(ms) <= furthestMs;

const known = new Map<string, readonly [time: Intl.DateTimeFormat, day: Intl.DateTimeFormat]>();

function formatsOf(timeZone: string): readonly [time: Intl.DateTimeFormat, day: Intl.DateTimeFormat] {
  const have = known.get(timeZone);
  if (have !== undefined) return have;
  const time = new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
  const day = new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
  const made = [time, day] as const;
  known.set(timeZone, made);
  return made;
}

/**
 * Hour and minute of a moment as the site's own clock has it, `14:05`; UTC is said where the site keeps it. No clock is
 * read: the moment is an argument, and the zone's rules come with the language (IANA time zone data).
 * @param ms since 1970 UTC; what no date can hold, as where something comes of a rate that is next to nothing, is said not to be known
 * @param timeZone IANA name
 */
export function clockTime(ms: number, timeZone: string): string {
  if (!isDate(ms)) return notKnown;
  const text = formatsOf(timeZone)[0].format(ms);
  return timeZone === 'UTC' ? `${text} UTC` : text;
}

/** The same with its day in front where that is another than today's: `2026-03-02 14:05`. */
export function clockDay(ms: number, nowMs: number, timeZone: string): string {
  if (!isDate(ms)) return notKnown;
  const [, day] = formatsOf(timeZone);
  const then = day.format(ms);
  return then === day.format(nowMs) ? clockTime(ms, timeZone) : `${then} ${clockTime(ms, timeZone)}`;
}
