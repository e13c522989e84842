/** What the Performance screen shows; its address holds all of it. */
export interface PerformanceView {
  /** follow: the last so many days up to now; fixed: from one moment to another, ISO 8601. */
  readonly period:
    | { readonly kind: 'last'; readonly days: number }
    | { readonly kind: 'fixed'; readonly from: string; readonly to: string };
  /** null: the whole site */
  readonly hall: string | null;
}

/** Below this the figures are too short for a statement, and so it is what is shown unless asked otherwise. */
export const usualDays = 30;
export const offeredDays = [1, 7, 30, 90, 365] as const;
const mostDays = 3660;

type Query = Readonly<Record<string, unknown>>;
const textOf = (query: Query, key: string): string => {
  const given = query[key];
  return typeof given === 'string' ? given : '';
};

export function readPerformanceAddress(query: Query): PerformanceView {
  const hall = textOf(query, 'hall');
  return { period: periodOf(query), hall: hall === '' ? null : hall };
}

function periodOf(query: Query): PerformanceView['period'] {
  const [from, to] = [Date.parse(textOf(query, 'from')), Date.parse(textOf(query, 'to'))];
  if (to > from) return { kind: 'fixed', from: new Date(from).toISOString(), to: new Date(to).toISOString() };
  const days = Number(textOf(query, 'days'));
  return { kind: 'last', days: Number.isInteger(days) && days >= 1 && days <= mostDays ? days : usualDays };
}

export const writePerformanceAddress = ({ period, hall }: PerformanceView): Record<string, string> => ({
  ...(hall === null ? {} : { hall }),
  ...(period.kind === 'fixed'
    ? { from: period.from, to: period.to }
    : period.days === usualDays
      ? {}
      : { days: String(period.days) }),
});

const minuteMs = 60_000;

/** What is asked of the server; up to the last whole minute, so that it is asked anew a minute on and not each second. */
export function performanceWish(
  { period, hall }: PerformanceView,
  now: string | null,
): { from: string; to: string; hall: string | null } | null {
  if (period.kind === 'fixed') return { from: period.from, to: period.to, hall };
  if (now === null) return null;
  const to = Math.floor(Date.parse(now) / minuteMs) * minuteMs;
  return { from: new Date(to - period.days * 86_400_000).toISOString(), to: new Date(to).toISOString(), hall };
}
