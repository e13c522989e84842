import type { Priority } from '@ebbline/shared/contract/alarm';

const minuteMs = 60_000;

/**
 * The longest that an alarm may be shelved at once, ms, by the most urgent priority that it may ever be raised with: a
 * shift of eight hours; an hour where a person would have minutes to act, so that someone looks again before the next
 * hour is over. Shelving must be bounded (ANSI/ISA-18.2-2016, IEC 62682); the figures are this project's.
 */
export const longestShelvingMs = (highest: Priority): number => (highest === 1 ? 60 : 8 * 60) * minuteMs;
