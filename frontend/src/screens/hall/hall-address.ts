import type { LocationQueryRaw } from 'vue-router';

type Query = Readonly<Record<string, unknown>>;

export const orders = ['place', 'need'] as const;
export const groupings = ['loop', 'gateway', 'none'] as const;
/** fit: as many words to a loop as there is room for all of them. */
export const rowSizes = ['fit', 'full', 'small'] as const;

/** How a hall is shown, as its address says. */
export interface HallAddress {
  readonly order: (typeof orders)[number];
  readonly group: (typeof groupings)[number];
  readonly rows: (typeof rowSizes)[number];
  /** On a wall: large, and nothing to be operated. */
  readonly wall: boolean;
}

const oneOf = <Choice extends string>(choices: readonly [Choice, ...Choice[]], asked: unknown): Choice =>
  choices.find((choice) => choice === asked) ?? choices[0];

/** What an address does not name, or names wrong, is the first of each list. */
export const readHallAddress = (query: Query): HallAddress => ({
  order: oneOf(orders, query['order']),
  group: oneOf(groupings, query['group']),
  rows: oneOf(rowSizes, query['rows']),
  wall: query['wall'] === 'on',
});

/** The query of an address with something changed; what is as usual is left out, what is of others stays. */
export function hallQuery(query: Query, change: Partial<HallAddress>): LocationQueryRaw {
  const { order, group, rows, wall } = { ...readHallAddress(query), ...change };
  const others = Object.entries(query).filter(([key]) => !['order', 'group', 'rows', 'wall'].includes(key));
  return {
    ...(Object.fromEntries(others) as LocationQueryRaw),
    ...(order === orders[0] ? {} : { order }),
    ...(group === groupings[0] ? {} : { group }),
    ...(rows === rowSizes[0] ? {} : { rows }),
    ...(wall ? { wall: 'on' } : {}),
  };
}
