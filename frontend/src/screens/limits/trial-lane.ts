import type { HistoryColumns, Site } from '@ebbline/shared/contract/http-api';
import { pointDefinition, pointPattern } from '@ebbline/shared/contract/point-table';
import type { ChartScale } from '../../charts/chart-scale';
import { chartScale } from '../../charts/chart-scale';
import type { Cell, Lane } from '../../charts/lane';
import { laneLine } from '../../charts/lane-line';
import { displayUnitOf } from '../../text/display-unit';
import { pointTitle } from '../../text/point-title';
import { inUnit as shownIn } from '../../text/shown-unit';
import type { DrawnLimit } from './drawn-limits';

const whose: { readonly [W in DrawnLimit['whose']]: string } = {
  live: 'as it runs',
  proposed: 'as proposed',
  both: 'as it runs and as proposed',
};

/** The point of a trial with both limits across it. */
export function trialLane(
  point: string,
  unit: Site['units'][number] | undefined,
  history: HistoryColumns | undefined,
  limits: readonly DrawnLimit[],
): Lane {
  const quantity = pointDefinition(point)?.quantity;
  const display =
    quantity === undefined
      ? { unit: '', factor: 1, decimals: 3 }
      : displayUnitOf(quantity, Infinity, pointPattern(point));
  const drawn = history === undefined ? { seconds: [], min: [], mean: [], max: [] } : laneLine(history, display);
  const title = pointTitle(point, unit);
  const inUnit = limits.map(({ value, ...one }) => ({ ...one, value: shownIn(value, display) }));
  return {
    id: point,
    title: display.unit === '' ? title : `${title}, ${display.unit}`,
    scale: withLimits(chartScale(quantity, display), drawn, inUnit),
    lines: [{ key: point, letter: 'a', ink: 0, ...drawn, uncertainty: null }],
    limits: inUnit.map((limit) => ({ value: limit.value, name: `limit ${whose[limit.whose]}` })),
  };
}

/** Both limits are what is compared: the axis reaches to them however far off they lie. */
function withLimits(
  scale: ChartScale,
  drawn: { readonly min: readonly Cell[]; readonly max: readonly Cell[] },
  limits: readonly DrawnLimit[],
): ChartScale {
  if (scale.range !== null || limits.length === 0) return scale;
  let [low, high] = [Infinity, -Infinity];
  for (const value of [...drawn.min, ...drawn.max, ...limits.map((limit) => limit.value)]) {
    if (typeof value !== 'number') continue;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  const room = Math.max((high - low) * 0.08, Math.abs(high) * 0.01, 1e-6);
  return { ...scale, range: [low - room, high + room] };
}

/** Parts of a unit that a point of its kind stands for: the ids to put in place of `<id>`; none where it stands for itself. */
export function partsOf(
  point: string,
  unit: Site['units'][number] | undefined,
): readonly { id: string; name: string }[] {
  if (!point.includes('<id>') || unit === undefined) return [];
  return point.startsWith('plate.') ? unit.plates : point.startsWith('branch.') ? unit.branches : [];
}

export const pointOfPart = (point: string, part: string | null): string =>
  part === null ? point : point.replace('<id>', part);
