import type { TrendName } from './trend-link';

type Query = Readonly<Record<string, unknown>>;

/** A value of a unit, or of a hall: one of its own points or a sum over its units. */
export type ValueName = TrendName | { readonly hall: string; readonly point: string };

/** Whose value it is. */
export type ValueHolder = { readonly unit: string } | { readonly hall: string };

/** Address of a loop with one of its values opened: what it is worked out from, and how sure it is. */
export const valueLink = (
  unit: string,
  point: string,
): { name: 'loop'; params: { unit: string }; query: { value: string } } => ({
  name: 'loop',
  params: { unit },
  query: { value: point },
});

/** No id has a slash. */
const ofHall = 'halls/';

/** Address of a hall with one of its values opened. */
export const hallValueLink = (
  hall: string,
  point: string,
): { name: 'hall'; params: { hall: string }; query: { value: string } } => ({
  name: 'hall',
  params: { hall },
  query: { value: `${ofHall}${hall}:${point}` },
});

/** The same on another screen, which stays: its address then names the unit or hall too. */
export const valueHere = <Q extends Query>(name: ValueName, query: Q): { query: Q & { value: string } } => ({
  query: { ...query, value: `${'unit' in name ? name.unit : `${ofHall}${name.hall}`}:${name.point}` },
});

/** The value that an address has opened; null where it opens none. @param unit the unit of the screen, where it is one unit's */
export function openedValue(query: Query, unit: string | null): ValueName | null {
  const { value } = query;
  if (typeof value !== 'string' || value === '') return null;
  const [first = '', second] = value.split(':');
  if (second === undefined) return unit === null ? null : { unit, point: first };
  if (first === '' || first === ofHall || second === '') return null;
  return first.startsWith(ofHall)
    ? { hall: first.slice(ofHall.length), point: second }
    : { unit: first, point: second };
}

/** One value has one such key. */
export const valueKey = (name: ValueName): string => valueHere(name, {}).query.value;

/** An address without the value that it has opened. */
export const withoutValue = <V>(query: Readonly<Record<string, V>>): Record<string, V> =>
  Object.fromEntries(Object.entries(query).filter(([key]) => key !== 'value'));
