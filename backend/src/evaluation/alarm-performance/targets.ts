import { fail, ok, type Failure, type Result } from '@ebbline/shared/errors/result';

/** Annunciations a day, hour and ten minutes: about acceptable, and the most that one operator manages. */
export interface RateTarget {
  readonly acceptable: number;
  readonly limit: number;
}

/** Targets that editions of the standard print differently; all others stand with their figures. */
export interface PerformanceTargets {
  readonly perDay: RateTarget;
}

/** ANSI/ISA-18.2-2009 prints 150 and 300 a day; the edition of 2016 leaves the figure out. */
export const usualTargets: PerformanceTargets = { perDay: { acceptable: 150, limit: 300 } };

/** `144/288`, as IEC 62682:2014 prints it: acceptable before limit, annunciations a day. */
export function readDayTarget(text: string): Result<RateTarget, Failure<'DAY_TARGET'>> {
  const match = /^(\d{1,5}(?:\.\d+)?)\/(\d{1,5}(?:\.\d+)?)$/.exec(text.trim());
  const [acceptable, limit] = [Number(match?.[1]), Number(match?.[2])];
  if (match === null || !(acceptable > 0) || !(limit >= acceptable))
    return fail({ code: 'DAY_TARGET', message: 'must be two numbers, acceptable before limit, such as 150/300' });
  return ok({ acceptable, limit });
}
