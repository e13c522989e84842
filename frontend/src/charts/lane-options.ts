import uPlot from 'uplot';
import { formatNumber } from '../text/format-number';
import type { Cell, Lane, LaneLine } from './lane';
import { alonePlaces } from './align-lines';
import { decimalsOfStep } from './chart-options';
import { drawLimits, drawLetters } from './draw-lane';
import { drawMarks } from './draw-marks';
import { drawStretch } from './draw-stretch';
import { columnsPerLine } from './lane-data';
import { rightPadding } from './lane-edges';
import type { LaneInk } from './lane-ink';
import { colourOf, dashOf, faint } from './lane-ink';
import { timeTicks } from './time-ticks';

export interface LaneHandlers {
  /** A stretch of time was drawn over, s since 1970. */
  readonly zoom: (from: number, to: number) => void;
  /** The picture was moved by so many s. */
  readonly pan: (seconds: number) => void;
  /** Where the pointer stands, s since 1970; null where it is away. */
  readonly hover: (seconds: number | null) => void;
}

export interface LanePicture {
  readonly width: number;
  readonly height: number;
  readonly lane: Lane;
  /** The lines as they are now: their values change without the picture being made anew. */
  readonly lines: () => readonly LaneLine[];
  /** Ends of both axes: times in s since 1970, values in the lane's unit. */
  readonly times: () => readonly [number, number];
  readonly values: () => readonly [number, number];
  readonly zone: string;
  readonly ink: LaneInk;
  readonly envelope: boolean;
  /** The times are written under the last lane only. */
  readonly timesUnder: boolean;
  /** Where the time axis begins, px: the same for all lanes that stand under one another. */
  readonly left: number;
  /** A stretch of time that is pointed out, s since 1970; null: none is. */
  readonly stretch: () => readonly [number, number] | null;
}

const font = '12px Barlow, sans-serif';

export function laneOptions(picture: LanePicture, handlers: LaneHandlers): uPlot.Options {
  const { lane, ink, zone } = picture;
  const axis = { stroke: ink.soft, font, grid: { stroke: ink.grid, width: 1 }, ticks: { stroke: ink.grid, width: 1 } };
  return {
    width: picture.width,
    height: picture.height,
    padding: [8, rightPadding, picture.timesUnder ? 0 : 6, 0],
    tzDate: (seconds) => uPlot.tzDate(new Date(seconds * 1000), zone),
    scales: { x: { time: true, range: () => [...picture.times()] }, y: { range: () => [...picture.values()] } },
    axes: [
      picture.timesUnder
        ? { ...axis, space: 70, values: (_, splits, _axis, _space, step) => timeTicks(splits, step, zone) }
        : { ...axis, values: () => [], size: 0 },
      { ...axis, size: picture.left, ...labelsOf(lane) },
    ],
    legend: { show: false },
    series: [{}, ...lane.lines.flatMap((line) => seriesOf(line, colourOf(ink, line.ink)))],
    bands: picture.envelope
      ? lane.lines.flatMap((line, index) =>
          line.mark === undefined
            ? [
                {
                  series: [index * columnsPerLine + 1, index * columnsPerLine + 3] as [number, number],
                  fill: faint(colourOf(ink, line.ink)),
                },
              ]
            : [],
        )
      : [],
    cursor: {
      sync: { key: 'ebbline-trends', setSeries: false },
      y: false,
      points: { size: 6 },
      drag: { x: true, y: false, setScale: false },
      bind: { dblclick: () => () => null, mousedown: panWith(handlers) },
    },
    hooks: {
      setSelect: [
        (chart) => {
          if (chart.select.width < 4) return;
          handlers.zoom(
            chart.posToVal(chart.select.left, 'x'),
            chart.posToVal(chart.select.left + chart.select.width, 'x'),
          );
          chart.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
        },
      ],
      setCursor: [
        (chart) => {
          const { left } = chart.cursor;
          handlers.hover(left === undefined || left < 0 ? null : chart.posToVal(left, 'x'));
        },
      ],
      draw: [
        (chart) => {
          drawStretch(chart, picture.stretch(), ink);
          drawLimits(chart, lane.limits, ink);
          drawMarks(chart, picture.lines(), ink);
          drawLetters(chart, picture.lines(), ink);
        },
      ],
    },
  };
}

function seriesOf({ ink, mark }: LaneLine, stroke: string): uPlot.Series[] {
  const edge: uPlot.Series = { width: 0, points: { show: false }, spanGaps: false };
  const doubt: uPlot.Series = { stroke, width: 1, dash: [1, 4], points: { show: false }, spanGaps: false };
  const mean: uPlot.Series = {
    stroke,
    width: mark === undefined ? 1.75 : 1,
    dash: dashOf(ink),
    spanGaps: false,
    points: {
      show: true,
      size: 5,
      filter: (chart, series) => alonePlaces([...(chart.data[series] as readonly Cell[])]),
    },
  };
  return [edge, mean, edge, doubt, doubt];
}

function labelsOf(lane: Lane): Partial<uPlot.Axis> {
  const { words } = lane.scale;
  return {
    ...(words === null ? {} : { splits: words.map((_, index) => index) }),
    values: (_, splits) => splits.map((at) => words?.[at] ?? plain(at, splits)),
  };
}

function plain(at: number, splits: readonly number[]): string {
  return formatNumber(at, decimalsOfStep(Math.abs((splits[1] ?? at + 1) - (splits[0] ?? at))));
}

/** With the shift key held the picture is moved; without, a stretch is drawn over to zoom into it. */
function panWith(handlers: LaneHandlers): uPlot.Cursor.MouseListenerFactory {
  return (chart, _target, draw) => (event) => {
    if (!event.shiftKey) return draw(event);
    const startX = event.clientX;
    const perPx = ((chart.scales['x']?.max ?? 0) - (chart.scales['x']?.min ?? 0)) / Math.max(1, chart.over.clientWidth);
    const end = (last: MouseEvent): void => {
      handlers.pan((startX - last.clientX) * perPx);
    };
    document.addEventListener('mouseup', end, { once: true });
    return null;
  };
}
