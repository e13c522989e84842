import type { Priority } from '@ebbline/shared/contract/alarm';

/** severe: many servers down, or water out; major: one rack, or redundancy lost; minor: maintenance cost. */
export type Severity = 'severe' | 'major' | 'minor';

/** An alert is for an engineer's list and is never counted as an alarm. */
export type Grade = Priority | 'alert';

const grid: Readonly<Record<Severity, readonly [under3Min: Grade, to10Min: Grade, over10Min: Grade]>> = {
  severe: [1, 2, 3],
  major: [2, 3, 3],
  minor: [3, 3, 'alert'],
};

/**
 * Priority is computed, never typed: severity × time to respond (method of ANSI/ISA-18.2-2016 clause 6 and
 * IEC 62682, clause from memory; the grid itself is this project's). 3 and 10 minutes belong to the middle column.
 */
export function gradeOf(severity: Severity, timeToRespondS: number): Grade {
  const [under3Min, to10Min, over10Min] = grid[severity];
  if (timeToRespondS < shortS) return under3Min;
  return timeToRespondS <= middleS ? to10Min : over10Min;
}

const shortS = 180;
const middleS = 600;

/** The most time that there can be where the grid gave this priority; its last column has no end. */
export function longestTimeS(severity: Severity, priority: Priority): number {
  const [under3Min, to10Min, over10Min] = grid[severity];
  if (over10Min === priority) return Number.POSITIVE_INFINITY;
  return to10Min === priority ? middleS : under3Min === priority ? shortS : Number.POSITIVE_INFINITY;
}

/** The priority of an alarm, or null where the grid makes it an alert: then it is not raised as an alarm. */
export function priorityOf(severity: Severity, timeToRespondS: number): Priority | null {
  const grade = gradeOf(severity, timeToRespondS);
  return grade === 'alert' ? null : grade;
}

/** The more urgent of two priorities; null (an alert) is the least. */
export function higher(first: Priority | null, second: Priority | null): Priority | null {
  if (first === null || second === null) return first ?? second;
  return first < second ? first : second;
}
