import type uPlot from 'uplot';
import type { LaneLimit, LaneLine } from './lane';
import type { LaneInk } from './lane-ink';
import { colourOf } from './lane-ink';

const px = (chart: uPlot): number => chart.ctx.canvas.width / Math.max(1, chart.width);

/** The axes leave their own alignment behind: what follows would be written out of the picture. */
function alignAsRead(ctx: CanvasRenderingContext2D): void {
  ctx.textAlign = 'left';
  ctx.textBaseline = 'alphabetic';
}

/** A name that has room: without the point that the lane says already, else cut with a sign that it is. */
function fitted(ctx: CanvasRenderingContext2D, name: string, room: number): string {
  const fits = (text: string): boolean => ctx.measureText(text).width <= room;
  const short = name.split(' · ')[0] ?? name;
  if (fits(name)) return name;
  if (fits(short)) return short;
  let kept = short;
  while (kept.length > 1 && !fits(`${kept}…`)) kept = kept.slice(0, -1);
  return `${kept.trimEnd()}…`;
}

/** Limits as dashed lines with their names over them. */
export function drawLimits(chart: uPlot, limits: readonly LaneLimit[], ink: LaneInk): void {
  const { ctx, bbox } = chart;
  const scale = px(chart);
  ctx.save();
  ctx.strokeStyle = ink.ink;
  ctx.fillStyle = ink.ink;
  ctx.lineWidth = scale;
  ctx.font = `${11 * scale}px Barlow, sans-serif`;
  alignAsRead(ctx);
  ctx.setLineDash([6 * scale, 4 * scale]);
  for (const limit of limits) {
    const y = Math.round(chart.valToPos(limit.value, 'y', true));
    if (y < bbox.top || y > bbox.top + bbox.height) continue;
    ctx.beginPath();
    ctx.moveTo(bbox.left, y);
    ctx.lineTo(bbox.left + bbox.width, y);
    ctx.stroke();
    const name = fitted(ctx, limit.name, bbox.width - 12 * scale);
    const wide = ctx.measureText(name).width;
    const above = y - 14 * scale > bbox.top;
    ctx.fillStyle = ink.paper;
    ctx.globalAlpha = 0.8;
    ctx.fillRect(bbox.left + 4 * scale, above ? y - 14 * scale : y + 2 * scale, wide + 4 * scale, 12 * scale);
    ctx.globalAlpha = 1;
    ctx.fillStyle = ink.ink;
    ctx.fillText(name, bbox.left + 6 * scale, above ? y - 4 * scale : y + 12 * scale);
  }
  ctx.restore();
}

/** The letter of each line at its newest place that is shown. */
export function drawLetters(chart: uPlot, lines: readonly LaneLine[], ink: LaneInk): void {
  if (lines.length < 2) return;
  const { ctx, bbox } = chart;
  const scale = px(chart);
  const taken: number[] = [];
  ctx.save();
  ctx.font = `600 ${12 * scale}px Barlow, sans-serif`;
  alignAsRead(ctx);
  for (const line of lines) {
    const at = line.mean.reduce<number>((found, cell, index) => (typeof cell === 'number' ? index : found), -1);
    const value = line.mean[at];
    const seconds = line.seconds[at];
    if (typeof value !== 'number' || seconds === undefined) continue;
    const x = Math.min(bbox.left + bbox.width, chart.valToPos(seconds, 'x', true));
    let y = chart.valToPos(value, 'y', true) + 4 * scale;
    while (taken.some((other) => Math.abs(other - y) < 11 * scale)) y += 11 * scale;
    taken.push(y);
    ctx.fillStyle = colourOf(ink, line.ink);
    ctx.fillText(line.letter, x + 5 * scale, y);
  }
  ctx.restore();
}
