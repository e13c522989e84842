import type { Trail } from '@ebbline/shared/contract/hall-trails';
import type { PressureAxis } from './pressure-axis';
import { toX } from './pressure-axis';

const round = (px: number): number => Math.round(px * 10) / 10;

/**
 * The last hour as a path: from lowest to highest pressure across, an hour ago at the top and the minute that runs at the bottom. A minute
 * in which nothing was seen is left open. To a tenth of a pixel.
 */
export function wakePath(trail: Trail, axis: PressureAxis, top: number, bottom: number): string {
  const { lowestPa, highestPa } = trail;
  const stepPx = (bottom - top) / lowestPa.length;
  const x = (pa: number): number => round(Math.min(axis.x1, Math.max(axis.x0, toX(axis, pa))));
  const y = (minute: number): number => round(top + minute * stepPx);
  let path = '';
  for (let from = 0; from < lowestPa.length; from += 1) {
    if (!isSeen(trail, from)) continue;
    let to = from;
    while (isSeen(trail, to)) to += 1;
    // Down along the lowest, and up again along the highest.
    path += `M${x(lowestPa[from] ?? 0)} ${y(from)}`;
    for (let at = from; at < to; at += 1) path += `H${x(lowestPa[at] ?? 0)}V${y(at + 1)}`;
    for (let at = to - 1; at >= from; at -= 1) path += `H${x(highestPa[at] ?? 0)}V${y(at)}`;
    path += 'Z';
    from = to;
  }
  return path;
}

const isSeen = ({ lowestPa, highestPa }: Trail, at: number): boolean =>
  typeof lowestPa[at] === 'number' && typeof highestPa[at] === 'number';
