import { pointDefinition, pointPattern } from '@ebbline/shared/contract/point-table';
import type { HeardPlace, KnownSeries } from './heard-place';
import type { NamedHolder } from './mapped-site';
import { movesWithPoint } from './moves-with-point.table';
import { movesWith } from './moves-with';
import { nothing, speaksAgainst, speaksFor, type Weighed } from './reasons';

/** From here on two series are said to move together. */
const together = 0.7;
/** So alike are two that tell the same. */
const same = 0.99;
const mostCompared = 3;

/** Whether a place moves as the point would with what is known of its unit; and whether it tells what arrives already. */
export function weighMovement(
  { series }: HeardPlace,
  point: string,
  holder: NamedHolder,
  known: readonly KnownSeries[],
): Weighed {
  const ofHolder = known.filter((one) => one.holder === holder.id && one.kind === holder.kind);
  const itself = ofHolder.find((one) => one.point === point);
  const twin = itself === undefined ? null : movesWith(series, itself.series);
  if (twin !== null && twin > same) return speaksAgainst(-1, `it moves just as ${titleOf(point)} that arrives already`);
  const ways = new Map(movesWithPoint(pointPattern(point)));
  const found = ofHolder
    .flatMap((one) => {
      const way = ways.get(pointPattern(one.point));
      return way === undefined || one.point === point ? [] : [{ one, way }];
    })
    .slice(0, mostCompared)
    .flatMap(({ one, way }) => {
      const alike = movesWith(series, one.series);
      return alike === null ? [] : [{ one, alike: alike * way, correlation: alike }];
    })
    .sort((a, b) => Math.abs(b.alike) - Math.abs(a.alike))[0];
  if (found === undefined || Math.abs(found.alike) < together) return nothing;
  const how = `(rank correlation ${found.correlation.toFixed(2)})`;
  return found.alike > 0
    ? speaksFor(1 + found.alike, `it moves with ${titleOf(found.one.point)} of ${holder.id}, as it should ${how}`)
    : speaksAgainst(-1, `it moves against ${titleOf(found.one.point)} of ${holder.id} ${how}`);
}

const titleOf = (point: string): string => (pointDefinition(point)?.title ?? point).toLowerCase();
