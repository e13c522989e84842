import { escape } from 'influx';
import { hourMs, minuteMs, type BucketPlan } from '../history-query';
import { minutesPolicy, secondsPolicy } from './to-points';

const quoted = (name: string): string => escape.quoted(name);

/** Periods [from, to) of one kind each, in order, that together make up the query's. */
interface Segment {
  readonly of: 'seconds' | 'minutes';
  readonly fromMs: number;
  readonly toMs: number;
}

/**
 * Statements whose rows are (start of bucket, min, sum, max, count). InfluxDB aligns its buckets to the epoch; the
 * offset argument of `GROUP BY time()` moves them to the query's start.
 * @param dueHours hours whose minutes are not, or no longer, those of their seconds
 * @param retiredBeforeMs from here on seconds are surely kept
 */
export function readStatements(
  plan: BucketPlan,
  holder: string,
  field: string,
  dueHours: ReadonlySet<number>,
  retiredBeforeMs: number,
): { readonly statements: string[]; readonly usesMinutes: boolean } {
  const segments = plan.byMinute ? byMinute(plan, dueHours) : bySecond(plan, retiredBeforeMs);
  const group = `GROUP BY time(${plan.bucketMs}ms, ${plan.fromMs % plan.bucketMs}ms) fill(none)`;
  const whole = 'SELECT min(lo), sum(s), max(hi), sum(n) FROM';
  const statements = segments.map(({ of, fromMs, toMs }) => {
    const where = `WHERE holder = ${escape.stringLit(holder)} AND time >= ${fromMs}ms AND time < ${toMs}ms`;
    const outer = `WHERE time >= ${fromMs}ms AND time < ${toMs}ms`;
    const seconds = `FROM ${quoted(secondsPolicy)}.second ${where}`;
    const f = quoted(field);
    if (of === 'minutes') {
      const [min, mean, max, count] = ['min', 'mean', 'max', 'count'].map((figure) => quoted(`${figure}_${field}`));
      const inner = `SELECT ${min} AS lo, ${mean} * ${count} AS s, ${max} AS hi, ${count} AS n FROM ${quoted(minutesPolicy)}.minute ${where}`;
      return `${whole} (${inner}) ${outer} ${group}`;
    }
    const figures = `SELECT min(${f}) AS lo, sum(${f}) AS s, max(${f}) AS hi, count(${f}) AS n ${seconds}`;
    return plan.byMinute
      ? `${whole} (${figures} GROUP BY time(1m) fill(none)) ${outer} ${group}`
      : `${figures} ${group}`;
  });
  return { statements, usesMinutes: segments.some((segment) => segment.of === 'minutes') };
}

function bySecond({ fromMs, toMs }: BucketPlan, retiredBeforeMs: number): Segment[] {
  const edge = Math.min(Math.max(fromMs, retiredBeforeMs), toMs);
  const before: Segment = { of: 'minutes', fromMs: Math.ceil(fromMs / minuteMs) * minuteMs, toMs: edge };
  const after: Segment = { of: 'seconds', fromMs: edge, toMs };
  return [before, after].filter((segment) => segment.toMs > segment.fromMs);
}

/** A minute counts in the bucket in which it begins, so the period runs from the first to the last minute's start. */
function byMinute({ fromMs, toMs }: BucketPlan, dueHours: ReadonlySet<number>): Segment[] {
  const [first, end] = [Math.ceil(fromMs / minuteMs) * minuteMs, Math.ceil(toMs / minuteMs) * minuteMs];
  const due = [...dueHours].filter((hour) => hour < end && hour + hourMs > first).sort((a, b) => a - b);
  const segments: Segment[] = [];
  let at = first;
  for (const hour of due) {
    const from = Math.max(at, hour);
    const to = Math.min(end, hour + hourMs);
    segments.push({ of: 'minutes', fromMs: at, toMs: from }, { of: 'seconds', fromMs: from, toMs: to });
    at = to;
  }
  segments.push({ of: 'minutes', fromMs: at, toMs: end });
  return segments.filter((segment) => segment.toMs > segment.fromMs);
}
