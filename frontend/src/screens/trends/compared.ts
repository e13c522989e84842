import type { LineMark } from '../../charts/lane';
import { saySpan } from '../../text/say-span';
import type { TrendName } from '../../text/trend-link';
import type { TrendView } from './trend-address';

/** What stands beside a line: the same point so long before, or the same point of another unit. */
export interface Comparison {
  readonly mark: LineMark;
  /** After the letter of the line. */
  readonly sign: string;
  /** s; 0: the same time. */
  readonly earlierSeconds: number;
  readonly words: string;
  readonly of: (name: TrendName) => TrendName | null;
}

/** What a view holds beside its lines, at most one of each kind. @param nameOf the name of a unit by its id */
export function comparisonsOf(
  { beside, earlierSeconds }: Pick<TrendView, 'beside' | 'earlierSeconds'>,
  nameOf: (unit: string) => string,
): readonly Comparison[] {
  const earlier: readonly Comparison[] =
    earlierSeconds === null
      ? []
      : [
          {
            mark: 'circle',
            sign: '′',
            earlierSeconds,
            words: `${saySpan(earlierSeconds)} earlier`,
            of: (name) => name,
          },
        ];
  const other: readonly Comparison[] =
    beside === null
      ? []
      : [
          {
            mark: 'diamond',
            sign: '″',
            earlierSeconds: 0,
            words: `of ${nameOf(beside)}`,
            of: ({ point, unit }) => (unit === beside ? null : { unit: beside, point }),
          },
        ];
  return [...earlier, ...other];
}

/** Once each, the points that a comparison asks the history for. */
export function namesOf(points: readonly TrendName[], comparison: Comparison | undefined): readonly TrendName[] {
  const names = points.flatMap((name) => comparison?.of(name) ?? []);
  const seen = new Set<string>();
  return names.filter(({ point, unit }) => !seen.has(`${unit}:${point}`) && seen.add(`${unit}:${point}`));
}
