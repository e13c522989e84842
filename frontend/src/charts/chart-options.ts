import uPlot from 'uplot';
import { formatNumber } from '../text/format-number';
import { formatMoment } from '../text/format-time';
import type { ChartScale } from './chart-scale';
import { lonelyPlaces } from './to-columns';

export interface ChartInk {
  readonly line: string;
  readonly band: string;
  readonly soft: string;
  readonly grid: string;
}

/** The colours of the theme in force. */
export function readInk(element: Element): ChartInk {
  const style = getComputedStyle(element);
  const of = (name: string): string => style.getPropertyValue(name).trim();
  return { line: of('--water'), band: of('--trail'), soft: of('--soft'), grid: of('--line') };
}

/** Place of the mean among the series. */
const meanSeries = 2;
const font = '12px Barlow, sans-serif';

/** Mean as a line over the band from least to most; gaps stay gaps. */
export function chartOptions(
  width: number,
  height: number,
  scale: ChartScale,
  zone: string,
  ink: ChartInk,
): uPlot.Options {
  const { unit } = scale;
  const edge = { stroke: ink.band, width: 1, points: { show: false }, spanGaps: false };
  /** Without a pointer on the chart its newest values are told. */
  const value = (chart: uPlot, given: number | null, series: number, at: number | null): string => {
    const shown = at === null ? newestOf(chart, series) : given;
    return shown === null ? '—' : scale.say(shown);
  };
  const axis = { stroke: ink.soft, font, grid: { stroke: ink.grid, width: 1 }, ticks: { stroke: ink.grid, width: 1 } };
  return {
    width,
    height,
    tzDate: (seconds) => uPlot.tzDate(new Date(seconds * 1000), zone),
    scales: { x: { time: true }, ...(scale.range === null ? {} : { y: { range: [...scale.range] } }) },
    axes: [
      { ...axis, values: '{HH}:{mm}' },
      {
        ...axis,
        size: scale.words === null ? 64 : 150,
        ...(unit === '' ? {} : { label: unit, labelFont: font, labelSize: 18 }),
        ...(scale.words === null ? {} : { splits: scale.words.map((_, index) => index) }),
        values: (_, splits) => splits.map((at) => scale.words?.[at] ?? axisNumber(at, splits)),
      },
    ],
    series: [
      {
        label: 'time',
        value: (chart, given: number | null, series, at: number | null) => {
          const seconds = at === null ? newestOf(chart, series) : given;
          return seconds === null ? '—' : formatMoment(new Date(seconds * 1000).toISOString(), zone);
        },
      },
      { ...edge, label: 'max', value },
      {
        label: 'mean',
        stroke: ink.line,
        width: 1.75,
        spanGaps: false,
        value,
        points: { show: true, size: 5, filter: lonelyOf },
      },
      { ...edge, label: 'min', value },
    ],
    bands: [{ series: [1, 3], fill: ink.band }],
    cursor: { drag: { x: false, y: false } },
  };
}

/** The last of a series that is not a gap; of the time, that of the last mean. */
function newestOf(chart: uPlot, series: number): number | null {
  const means: (number | null | undefined)[] = Array.from(chart.data[meanSeries] ?? []);
  const last = means.reduce<number>((found, mean, index) => (typeof mean === 'number' ? index : found), -1);
  return last < 0 ? null : (chart.data[series]?.[last] ?? null);
}

function lonelyOf(chart: uPlot, series: number): number[] {
  return lonelyPlaces(Array.from(chart.data[series] ?? []));
}

function axisNumber(at: number, splits: readonly number[]): string {
  const step = Math.abs((splits[1] ?? at + 1) - (splits[0] ?? at));
  return formatNumber(at, decimalsOfStep(step));
}

/** Decimals that print every multiple of a step as it is: two for 0.25, three for 0.025. */
export function decimalsOfStep(step: number): number {
  for (let decimals = 0; decimals < 6; decimals += 1) {
    const scaled = step * 10 ** decimals;
    if (Math.abs(scaled - Math.round(scaled)) < 1e-6 * Math.max(1, scaled)) return decimals;
  }
  return 6;
}
