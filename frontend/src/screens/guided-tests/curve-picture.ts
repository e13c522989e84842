import type { GuidedCurve } from '@ebbline/shared/contract/guided-curve';
import { displayUnitOf } from '../../text/display-unit';
import { formatNumber } from '../../text/format-number';
import { inUnit, spreadInUnit, type DisplayUnit } from '../../text/shown-unit';

interface Box {
  readonly width: number;
  readonly height: number;
}
interface Tick {
  readonly at: number;
  readonly text: string;
}
/** The picture of a curve in CSS px: points with their bars, the curve with its band, and both axes. */
export interface CurvePicture {
  readonly frame: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly across: readonly Tick[];
  readonly up: readonly Tick[];
  readonly acrossUnit: string;
  readonly upUnit: string;
  readonly points: readonly {
    readonly title: string;
    readonly x: number;
    readonly y: number;
    /** Half lengths of the bars. */
    readonly acrossBar: number;
    readonly upBar: number;
  }[];
  readonly line: string;
  readonly band: string;
}

/** Room for the words of the axes, px. */
const room = { left: 62, right: 14, top: 10, bottom: 38 } as const;

/** In the units that the person reads; both axes end a little beyond what is drawn, the lower at nought where that is near. */
export function curvePicture({ across, up, points, line }: GuidedCurve, { width, height }: Box): CurvePicture {
  const acrossUnit = displayUnitOf(across.quantity, points[0]?.across ?? 0);
  const upUnit = displayUnitOf(up.quantity, points[0]?.up ?? 0);
  const frame = { left: room.left, right: width - room.right, top: room.top, bottom: height - room.bottom };
  const xs = scaleOf(
    [
      ...points.flatMap((one) => [one.across - one.acrossUncertainty, one.across + one.acrossUncertainty]),
      ...line.map((one) => one.across),
    ],
    acrossUnit,
    frame.left,
    frame.right,
  );
  const ys = scaleOf(
    [
      ...points.flatMap((one) => [one.up - one.upUncertainty, one.up + one.upUncertainty]),
      ...line.flatMap((one) => [one.up - one.uncertainty, one.up + one.uncertainty]),
    ],
    upUnit,
    frame.bottom,
    frame.top,
  );
  const pair = (x: number, y: number): string => `${round(xs.place(x))},${round(ys.place(y))}`;
  const above = line.map((one) => pair(one.across, one.up + one.uncertainty));
  const below = line.map((one) => pair(one.across, one.up - one.uncertainty));
  return {
    frame,
    across: xs.ticks,
    up: ys.ticks,
    acrossUnit: acrossUnit.unit,
    upUnit: upUnit.unit,
    points: points.map((one) => ({
      title: one.title,
      x: round(xs.place(one.across)),
      y: round(ys.place(one.up)),
      acrossBar: round(xs.length(one.acrossUncertainty)),
      upBar: round(ys.length(one.upUncertainty)),
    })),
    line: line.map((one) => pair(one.across, one.up)).join(' '),
    band: [...above, ...below.reverse()].join(' '),
  };
}

const round = (px: number): number => Math.round(px * 10) / 10;

interface Scale {
  readonly ticks: readonly Tick[];
  place(value: number): number;
  length(spread: number): number;
}

function scaleOf(values: readonly number[], unit: DisplayUnit, from: number, to: number): Scale {
  const shown = values.map((value) => inUnit(value, unit));
  const [least, most] = [Math.min(...shown), Math.max(...shown)];
  const low = least > 0 && least < 0.6 * most ? 0 : least;
  const step = roundStep((most - low) / 5);
  const first = Math.floor(low / step) * step;
  const last = Math.ceil(most / step) * step;
  const span = Math.max(last - first, step);
  const place = (value: number): number => from + ((value - first) / span) * (to - from);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return {
    ticks: Array.from({ length: Math.round(span / step) + 1 }, (_, i) => ({
      at: round(place(first + i * step)),
      text: formatNumber(first + i * step, decimals),
    })),
    place: (value) => place(inUnit(value, unit)),
    length: (spread) => Math.abs((spreadInUnit(spread, unit) / span) * (to - from)),
  };
}

/** The next of 1, 2, 5, 10 … */
function roundStep(wanted: number): number {
  if (!(wanted > 0)) return 1;
  const ten = 10 ** Math.floor(Math.log10(wanted));
  return (wanted <= ten ? 1 : wanted <= 2 * ten ? 2 : wanted <= 5 * ten ? 5 : 10) * ten;
}
