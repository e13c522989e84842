import { printPriorities } from './print-ink';

/** Outlines in a box of 20 × 20: pentagon, half disc, bar, as on the screens. */
const shapes: { readonly [P in 1 | 2 | 3]: string } = {
  1: 'M10 1.2 18.8 7.6 15.4 18 4.6 18 1.2 7.6Z',
  2: 'M.8 17V12.4A9.2 9.2 0 0 1 19.2 12.4V17Z',
  3: 'M1.2 4.5 18.8 4.5 18.8 15.5 1.2 15.5Z',
};

/** The mark of a priority with its number. @param x @param y its left upper corner */
export function drawPriority(ctx: CanvasRenderingContext2D, priority: 1 | 2 | 3, x: number, y: number): void {
  ctx.save();
  ctx.translate(x, y);
  ctx.fillStyle = printPriorities[priority];
  ctx.fill(new Path2D(shapes[priority]));
  ctx.fillStyle = '#ffffff';
  ctx.font = '600 11px Barlow, sans-serif';
  ctx.textAlign = 'center';
  ctx.fillText(String(priority), 10, 14.4);
  ctx.restore();
}
