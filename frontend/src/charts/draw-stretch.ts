import type uPlot from 'uplot';
import type { LaneInk } from './lane-ink';

/** A stretch of time that is pointed out: its two ends as lines, what lies between them a little darker. @param stretch s since 1970 */
export function drawStretch(chart: uPlot, stretch: readonly [number, number] | null, ink: LaneInk): void {
  if (stretch === null) return;
  const { bbox, ctx } = chart;
  const scale = ctx.canvas.width / Math.max(1, chart.width);
  const within = (seconds: number): number =>
    Math.min(bbox.left + bbox.width, Math.max(bbox.left, chart.valToPos(seconds, 'x', true)));
  const [left, right] = [within(stretch[0]), within(stretch[1])];
  ctx.save();
  ctx.fillStyle = ink.ink;
  ctx.globalAlpha = 0.08;
  ctx.fillRect(left, bbox.top, right - left, bbox.height);
  ctx.globalAlpha = 1;
  for (const x of new Set([left, right])) ctx.fillRect(x, bbox.top, scale, bbox.height);
  ctx.restore();
}
