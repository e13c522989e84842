import type uPlot from 'uplot';
import type { LaneLine, LineMark } from './lane';
import type { LaneInk } from './lane-ink';
import { colourOf } from './lane-ink';

/** Marks stand at least so far apart. CSS px */
const apart = 64;
const reach = 3.5;

/** Hollow marks along the lines that are held beside the others: thin alone would tell too little. */
export function drawMarks(chart: uPlot, lines: readonly LaneLine[], ink: LaneInk): void {
  const { bbox, ctx } = chart;
  const scale = ctx.canvas.width / Math.max(1, chart.width);
  ctx.save();
  ctx.lineWidth = 1.25 * scale;
  // The lines leave their dashes behind.
  ctx.setLineDash([]);
  ctx.fillStyle = ink.paper;
  for (const { ink: which, mark, mean, seconds } of lines) {
    if (mark === undefined) continue;
    ctx.strokeStyle = colourOf(ink, which);
    let last = -Infinity;
    seconds.forEach((at, index) => {
      const value = mean[index];
      const x = chart.valToPos(at, 'x', true);
      if (typeof value !== 'number' || x < bbox.left || x > bbox.left + bbox.width || x - last < apart * scale) return;
      last = x;
      ctx.beginPath();
      markOutline(ctx, mark, x, chart.valToPos(value, 'y', true), reach * scale);
      ctx.fill();
      ctx.stroke();
    });
  }
  ctx.restore();
}

/** The outline of a mark about a place. @param half half of its width, in px of the canvas */
export function markOutline(ctx: CanvasRenderingContext2D, mark: LineMark, x: number, y: number, half: number): void {
  if (mark === 'circle') {
    ctx.arc(x, y, half, 0, 2 * Math.PI);
    return;
  }
  ctx.moveTo(x, y - 1.3 * half);
  ctx.lineTo(x + 1.3 * half, y);
  ctx.lineTo(x, y + 1.3 * half);
  ctx.lineTo(x - 1.3 * half, y);
  ctx.closePath();
}
