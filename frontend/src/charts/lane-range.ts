import type { Cell, Lane } from './lane';

/** A limit farther off than this many heights of the data is named beside the picture, not drawn: it would flatten the lines. */
const reach = 1.5;
const leastHeight = 1e-6;

function valuesOf(lane: Lane): readonly number[] {
  const known = (column: readonly Cell[]): number[] =>
    column.filter((cell): cell is number => typeof cell === 'number');
  return lane.lines.flatMap((line) => {
    const edges = line.mean.flatMap((mean, index) => {
      const spread = line.uncertainty?.[index] ?? 0;
      return typeof mean === 'number' ? [mean - spread, mean + spread] : [];
    });
    // Of a line that is held beside the others the means alone are drawn.
    return line.mark === undefined ? [...known(line.min), ...known(line.max), ...edges] : known(line.mean);
  });
}

/** Ends of a lane's axis, with the limits that lie near enough; and those that do not. */
export function laneRange(lane: Lane): { readonly range: readonly [number, number]; readonly far: Lane['limits'] } {
  if (lane.scale.range !== null) return { range: lane.scale.range, far: [] };
  let [low, high] = [Infinity, -Infinity];
  for (const value of valuesOf(lane)) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  if (low > high) [low, high] = [0, 1];
  const height = Math.max(high - low, Math.abs(high) * 0.02, leastHeight);
  const near = lane.limits.filter(({ value }) => value >= low - reach * height && value <= high + reach * height);
  const bottom = Math.min(low, ...near.map(({ value }) => value));
  const top = Math.max(high, ...near.map(({ value }) => value));
  const room = Math.max((top - bottom) * 0.08, height * 0.08);
  return { range: [bottom - room, top + room], far: lane.limits.filter((limit) => !near.includes(limit)) };
}
