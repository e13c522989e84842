import type { EnergyStep } from '@ebbline/shared/contract/energy';

const quarterMs = 900_000;

/** Longer than any period of that step: a day of a change of clocks has 25 hours, an hour may take 90 minutes. */
const longestMs: Readonly<Record<EnergyStep, number>> = {
  hour: 2 * 3_600_000,
  day: 26 * 3_600_000,
  month: 32 * 86_400_000,
};

/** Which local hour, day or month an instant is in. The hour that comes twice, as clocks go back, is two. */
function periodName(step: EnergyStep, timeZone: string): (ms: number) => string {
  const hour = { hour: '2-digit', hourCycle: 'h23', timeZoneName: 'longOffset' } as const;
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    ...(step === 'month' ? {} : { day: '2-digit' }),
    ...(step === 'hour' ? hour : {}),
  });
  return (ms) => format.format(ms);
}

/** The first instant on the quarter-hour grid in (afterMs, untilMs] at which `isPast` holds, as it does from then on. */
function firstPast(afterMs: number, untilMs: number, isPast: (ms: number) => boolean): number {
  let low = Math.floor(afterMs / quarterMs);
  let high = Math.ceil(untilMs / quarterMs);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (isPast(middle * quarterMs)) high = middle;
    else low = middle;
  }
  return high * quarterMs;
}

/**
 * Boundaries of the local hours, days or months of a time zone that cover [fromMs, toMs): the first is where the period of `fromMs`
 * begins, the last where that of the last instant ends. Every change of clocks of today falls on a quarter of an hour, and so do
 * these. `most`: no more periods than that; null where there would be more.
 */
export function localPeriods(
  fromMs: number,
  toMs: number,
  step: EnergyStep,
  timeZone: string,
  most: number,
): readonly number[] | null {
  const name = periodName(step, timeZone);
  const longest = longestMs[step];
  const first = name(fromMs);
  const boundaries = [firstPast(fromMs - longest, fromMs, (ms) => ms > fromMs || name(ms) === first)];
  for (let start = boundaries[0] ?? fromMs; start < toMs;) {
    if (boundaries.length > most) return null;
    const own = name(start);
    start = firstPast(start, start + longest, (ms) => name(ms) !== own);
    boundaries.push(start);
  }
  return boundaries;
}
