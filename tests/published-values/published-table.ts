/** A number of the function under test, from published inputs in their printed units, as the published unit. */
export type Evaluate = (equation: (...inputs: number[]) => number, inputs: Readonly<Record<string, number>>) => number;

export interface PublishedTable {
  readonly title: string;
  /** The derived point whose registered equation is called, or a function of `shared` where no derived point rests on it alone. */
  readonly subject: { readonly point: string } | { readonly equation: (...inputs: never[]) => number };
  readonly evaluate: Evaluate;
  /** The same number out of `deriveHall` and `deriveUnit`: what is stored and judged, not the equation alone. */
  readonly onSite?: {
    readonly point: string;
    readonly evaluate: (inputs: PublishedRow['inputs']) => number;
    /** In place of the rows' own, where the site's own fluid or memory makes it wider: the reason stands beside it. */
    readonly tolerance?: PublishedRow['tolerance'];
  };
  readonly rows: readonly PublishedRow[];
}

/**
 * What stands behind a number: `published` – printed by someone else, or an equation that someone else published worked
 * out by a third program; `computed` – our own arithmetic, or by hand; a number of the trade without a source; recalled.
 */
export type RowStatus = 'published' | 'computed' | 'common-practice' | 'from-memory';

export interface PublishedRow {
  /** Begins with an id of `check-ids.ts` where the row is one of those; what follows a space tells values of one row apart. */
  readonly id: string;
  readonly status: RowStatus;
  readonly source: string;
  /** As printed; the units stand in the table's `evaluate`. */
  readonly inputs: Readonly<Record<string, number>>;
  readonly expected: number;
  readonly tolerance: { readonly kind: 'absolute' | 'relative'; readonly value: number };
}

export const absolute = (value: number): PublishedRow['tolerance'] => ({ kind: 'absolute', value });
export const relative = (value: number): PublishedRow['tolerance'] => ({ kind: 'relative', value });
