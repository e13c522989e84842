import type { TrendName } from './trend-link';

type Query = Readonly<Record<string, unknown>>;

/** Address of a loop with one of its values opened: what it is worked out from, and how sure it is. */
export const valueLink = (
  unit: string,
  point: string,
): { name: 'loop'; params: { unit: string }; query: { value: string } } => ({
  name: 'loop',
  params: { unit },
  query: { value: point },
});

/** The same on another screen, which stays: its address then names the unit too. */
export const valueHere = <Q extends Query>({ unit, point }: TrendName, query: Q): { query: Q & { value: string } } => ({
  query: { ...query, value: `${unit}:${point}` },
});

/** The value that an address has opened; null where it opens none. @param unit the unit of the screen, where it is one unit's */
export function openedValue(query: Query, unit: string | null): TrendName | null {
  const { value } = query;
  if (typeof value !== 'string' || value === '') return null;
  const [first = '', second] = value.split(':');
  if (second === undefined) return unit === null ? null : { unit, point: first };
  return first === '' || second === '' ? null : { unit: first, point: second };
}

/** An address without the value that it has opened. */
export const withoutValue = <V>(query: Readonly<Record<string, V>>): Record<string, V> =>
  Object.fromEntries(Object.entries(query).filter(([key]) => key !== 'value'));
