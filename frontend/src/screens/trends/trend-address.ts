import { maximumTrendPoints } from '@ebbline/shared/contract/live-feed';
import type { TrendName } from '../../text/trend-link';

/** What the Trends screen shows; its address holds all of it, so that the address shows it again. */
export interface TrendView {
  readonly points: readonly TrendName[];
  /** follow: the last `seconds` up to now; fixed: from one moment to another, ms since 1970. */
  readonly period:
    | { readonly kind: 'follow'; readonly seconds: number }
    | { readonly kind: 'fixed'; readonly fromMs: number; readonly toMs: number };
  readonly envelope: boolean;
  readonly limits: boolean;
  readonly uncertainty: boolean;
  /** Alarms over the time axis. */
  readonly alarms: boolean;
  /** Notes of people over the time axis. */
  readonly notes: boolean;
  /** Each line again as it ran so long before; null: none is. s */
  readonly earlierSeconds: number | null;
  /** Id of a unit whose same points stand beside; null: none does. */
  readonly beside: string | null;
}

export const usualSeconds = 3600;
/** Shorter than this there is nothing to see at a sample a second. s */
export const shortestSeconds = 60;
/** Ten years. s */
export const longestSeconds = 315_360_000;

type Query = Readonly<Record<string, unknown>>;
const textOf = (query: Query, key: string): string => {
  const given = query[key];
  return typeof given === 'string' ? given : '';
};

/** What an address asks for; what can't be read of it is left out, and the usual taken. */
export function readAddress(query: Query): TrendView {
  return {
    points: pointsOf(textOf(query, 'points')),
    period: periodOf(query),
    envelope: textOf(query, 'envelope') !== 'no',
    limits: textOf(query, 'limits') !== 'no',
    uncertainty: textOf(query, 'uncertainty') === 'yes',
    alarms: textOf(query, 'alarms') !== 'no',
    notes: textOf(query, 'notes') !== 'no',
    earlierSeconds: earlierOf(textOf(query, 'earlier')),
    beside: /^[^:,\s]{1,200}$/.test(textOf(query, 'beside')) ? textOf(query, 'beside') : null,
  };
}

function pointsOf(text: string): readonly TrendName[] {
  const names = text.split(',').flatMap((part) => {
    const [unit = '', point = ''] = part.split(':');
    return unit === '' || point === '' ? [] : [{ unit, point }];
  });
  const seen = new Set<string>();
  const once = names.filter((name) => !seen.has(keyOf(name)) && seen.add(keyOf(name)));
  return once.slice(0, maximumTrendPoints);
}

function earlierOf(text: string): number | null {
  const seconds = Number(text);
  return text !== '' && Number.isInteger(seconds) && seconds >= shortestSeconds && seconds <= longestSeconds
    ? seconds
    : null;
}

function periodOf(query: Query): TrendView['period'] {
  const fromMs = Date.parse(textOf(query, 'from'));
  const toMs = Date.parse(textOf(query, 'to'));
  const length = (toMs - fromMs) / 1000;
  if (length >= shortestSeconds && length <= longestSeconds) return { kind: 'fixed', fromMs, toMs };
  const seconds = Number(textOf(query, 'last'));
  const fits = seconds >= shortestSeconds && seconds <= longestSeconds;
  return { kind: 'follow', seconds: fits ? seconds : usualSeconds };
}

/** The address behind a view; what is as usual is left out. */
export function writeAddress(view: TrendView): Record<string, string> {
  const { points, period } = view;
  return {
    ...(points.length === 0 ? {} : { points: points.map((name) => keyOf(name)).join(',') }),
    ...(period.kind === 'fixed'
      ? { from: new Date(period.fromMs).toISOString(), to: new Date(period.toMs).toISOString() }
      : period.seconds === usualSeconds
        ? {}
        : { last: String(period.seconds) }),
    ...(view.envelope ? {} : { envelope: 'no' }),
    ...(view.limits ? {} : { limits: 'no' }),
    ...(view.uncertainty ? { uncertainty: 'yes' } : {}),
    ...(view.alarms ? {} : { alarms: 'no' }),
    ...(view.notes ? {} : { notes: 'no' }),
    ...(view.earlierSeconds === null ? {} : { earlier: String(view.earlierSeconds) }),
    ...(view.beside === null ? {} : { beside: view.beside }),
  };
}

/** One point of one unit in a word. */
export const keyOf = ({ unit, point }: TrendName): string => `${unit}:${point}`;
