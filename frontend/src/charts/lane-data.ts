import type uPlot from 'uplot';
import { alignLines } from './align-lines';
import type { Cell, LaneLine } from './lane';

/** Columns of a line: most, mean, least, and the two edges of its uncertainty. */
export const columnsPerLine = 5;

/** The lines of a lane as the chart takes them: one array of times, then five columns a line. */
export function laneData(lines: readonly LaneLine[]): uPlot.AlignedData {
  const { seconds, columns } = alignLines(lines);
  const edge = (mean: readonly Cell[], spread: readonly Cell[], sign: 1 | -1): Cell[] =>
    mean.map((cell, index) => {
      const by = spread[index];
      if (typeof cell !== 'number') return cell;
      return typeof by === 'number' ? cell + sign * by : null;
    });
  return [
    seconds,
    ...columns.flatMap(({ min, mean, max, uncertainty }) => [
      max,
      mean,
      min,
      edge(mean, uncertainty, 1),
      edge(mean, uncertainty, -1),
    ]),
  ];
}
