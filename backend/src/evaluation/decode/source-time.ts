import type { TopicPlan } from '../site/compiled-site';
import { strictNumber } from './strict-number';
import { parseRfc3339 } from './rfc3339';

type TimeForm = NonNullable<TopicPlan['timeForm']>;

const asNumber = (raw: unknown): number =>
  typeof raw === 'number' ? raw : typeof raw === 'string' ? strictNumber(raw) : Number.NaN;

const readers: Readonly<Record<TimeForm, (raw: unknown) => number>> = {
  iso: (raw) => (typeof raw === 'string' ? parseRfc3339(raw) : Number.NaN),
  epochSeconds: (raw) => Math.round(asNumber(raw) * 1000),
  epochMilliseconds: (raw) => Math.round(asNumber(raw)),
};

/** A source time as the site file says it is written → ms since 1970 UTC; NaN where it is not that. */
export function readSourceTime(raw: unknown, form: TimeForm): number {
  const ms = readers[form](raw);
  return Math.abs(ms) < 8.64e15 ? ms : Number.NaN;
}
