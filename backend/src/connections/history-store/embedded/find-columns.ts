import type { SecondsQuery } from '../../../ports/history-store';
import type { Catalogue } from './catalogue';

/** A column that was asked for and is there: its place in the question, and in the rows. */
export interface FoundColumn {
  readonly column: number;
  readonly position: number;
}

export interface FoundHolder {
  /** Of the holder, in the rows. */
  readonly number: number;
  readonly found: readonly FoundColumn[];
}

/** Which of the columns are there, in the order in which they were asked for; null where the holder has none of them. */
export function findColumns(
  catalogue: Pick<Catalogue, 'find'>,
  { holder, columns }: Pick<SecondsQuery, 'holder' | 'columns'>,
): FoundHolder | null {
  let number = -1;
  const found = columns.flatMap(({ point, unitOfMeasure }, column) => {
    const place = catalogue.find(holder, point, unitOfMeasure);
    if (place === null) return [];
    number = place.holder;
    return [{ column, position: place.position }];
  });
  return found.length === 0 ? null : { number, found };
}
