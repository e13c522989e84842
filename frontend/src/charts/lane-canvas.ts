import uPlot from 'uplot';
import type { Lane } from './lane';
import { laneData } from './lane-data';
import { laneOptions } from './lane-options';
import { laneRange } from './lane-range';
import { printInk } from './print-ink';

export interface LaneCanvasWish {
  readonly lane: Lane;
  readonly from: number;
  readonly to: number;
  readonly zone: string;
  readonly envelope: boolean;
  readonly left: number;
  readonly width: number;
  readonly height: number;
  readonly timesUnder: boolean;
}

const noHandlers = { zoom: () => undefined, pan: () => undefined, hover: () => undefined };

/** A lane drawn apart from the page, with the inks of paper. Resolves with its canvas, which has `devicePixelRatio` dots a px. */
export async function laneCanvas(wish: LaneCanvasWish): Promise<HTMLCanvasElement> {
  const { envelope, from, height, lane, left, timesUnder, to, width, zone } = wish;
  const { far, range } = laneRange(lane);
  const picture = {
    ...{ width, height, zone, envelope, left, timesUnder, ink: printInk },
    lane: { ...lane, limits: lane.limits.filter((limit) => !far.includes(limit)) },
    lines: () => lane.lines,
    times: () => [from, to] as const,
    values: () => range,
    stretch: () => null,
  };
  const options = laneOptions(picture, noHandlers);
  return new Promise((resolve) => {
    const drawn = (chart: uPlot): void => resolve(chart.ctx.canvas);
    const hooks = { ...options.hooks, draw: [...(options.hooks?.draw ?? []), drawn] };
    new uPlot({ ...options, hooks }, laneData(lane.lines), document.createElement('div'));
  });
}
