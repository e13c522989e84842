import type { Lane } from './lane';
import { markOutline } from './draw-marks';
import { drawPriority } from './draw-priority';
import { laneCanvas } from './lane-canvas';
import { dashOf, colourOf } from './lane-ink';
import { printInk, printPriorities } from './print-ink';
import { rightPadding } from './lane-edges';

/** Something on the time axis, s since 1970. */
export interface PictureSpan {
  readonly from: number;
  readonly to: number;
  readonly priority: 1 | 2 | 3;
  readonly words: string;
}

/** What somebody wrote about a time, s since 1970. */
export interface PictureNote {
  readonly at: number;
  readonly words: string;
}

export interface TrendPicture {
  readonly title: string;
  /** Period, zone and age, a line each. */
  readonly under: readonly string[];
  readonly lanes: readonly Lane[];
  readonly nameOf: (lane: Lane, index: number) => string;
  readonly from: number;
  readonly to: number;
  readonly zone: string;
  readonly envelope: boolean;
  readonly left: number;
  readonly spans: readonly PictureSpan[];
  readonly written: readonly PictureNote[];
  /** What else has to be known, a line each. */
  readonly notes: readonly string[];
}

/** CSS px; the picture has twice as many dots, for paper. */
const width = 1200;
const margin = 28;
const dots = 2;
const lineHeight = 19;

/** The trend as a picture of its own: title, period and age, every axis with its unit of measure, a key, and the alarms in words. */
export async function trendPicture(wish: TrendPicture): Promise<Blob | null> {
  const { envelope, from, lanes, left, notes, spans, to, under, written, zone } = wish;
  const height = lanes.length > 3 ? 180 : 240;
  const drawn = await Promise.all(
    lanes.map((lane, index) => {
      const timesUnder = index === lanes.length - 1;
      const size = { width: width - 2 * margin, height: height + (timesUnder ? 46 : 0), timesUnder };
      return laneCanvas({ lane, from, to, zone, envelope, left, ...size });
    }),
  );
  const canvas = document.createElement('canvas');
  const ctx = canvas.getContext('2d');
  if (ctx === null) return null;
  const ofLanes = lanes.reduce((sum, { lines }) => sum + height + 46 + lines.length * lineHeight, 46);
  const broken = written.map((note) => ({
    ...note,
    lines: brokenText(ctx, note.words, width - 2 * margin - left - 26),
  }));
  const writtenLines = broken.reduce((sum, { lines }) => sum + lines.length + 0.7, 0);
  canvas.width = width * dots;
  canvas.height = Math.ceil(
    (margin * 2 + 80 + (under.length + notes.length + spans.length * 1.7 + writtenLines) * lineHeight + ofLanes) * dots,
  );
  ctx.scale(dots, dots);
  ctx.fillStyle = printInk.paper;
  ctx.fillRect(0, 0, canvas.width, canvas.height);
  let y = margin + 20;
  const write = (text: string, font: string, colour: string, x = margin): void => {
    ctx.font = `${font} Barlow, sans-serif`;
    ctx.fillStyle = colour;
    ctx.fillText(text, x, y, width - margin - x);
  };
  write(wish.title, '600 22px', printInk.ink);
  for (const line of under) {
    y += lineHeight;
    write(line, '14px', printInk.soft);
  }
  lanes.forEach((lane, index) => {
    const one = drawn[index];
    y += 28;
    write(lane.title, '600 15px', printInk.ink);
    y += 8;
    if (one !== undefined) {
      const high = (one.height * (width - 2 * margin)) / Math.max(1, one.width);
      ctx.drawImage(one, margin, y, width - 2 * margin, high);
      y += high;
    }
    lane.lines.forEach((line, at) => {
      y += lineHeight;
      ctx.strokeStyle = colourOf(printInk, line.ink);
      ctx.lineWidth = line.mark === undefined ? 2.5 : 1.25;
      ctx.setLineDash(dashOf(line.ink));
      ctx.beginPath();
      ctx.moveTo(margin + left, y - 5);
      ctx.lineTo(margin + left + 28, y - 5);
      ctx.stroke();
      ctx.setLineDash([]);
      if (line.mark !== undefined) {
        ctx.fillStyle = printInk.paper;
        ctx.beginPath();
        markOutline(ctx, line.mark, margin + left + 14, y - 5, 3.5);
        ctx.fill();
        ctx.stroke();
      }
      write(`${line.letter}  ${wish.nameOf(lane, at)}`, '14px', printInk.ink, margin + left + 38);
    });
  });
  if (spans.length > 0) {
    y += 28;
    write('alarms', '600 15px', printInk.ink);
  }
  const plot = { left: margin + left, right: width - margin - rightPadding };
  const x = (seconds: number): number =>
    plot.left + ((plot.right - plot.left) * (Math.min(to, Math.max(from, seconds)) - from)) / (to - from);
  for (const span of spans) {
    y += lineHeight * 1.7;
    ctx.fillStyle = printPriorities[span.priority];
    ctx.fillRect(x(span.from), y - 24, Math.max(2, x(span.to) - x(span.from)), 5);
    drawPriority(ctx, span.priority, plot.left, y - 16);
    write(span.words, '13px', printInk.ink, plot.left + 26);
  }
  if (broken.length > 0) {
    y += 28;
    write('notes', '600 15px', printInk.ink);
  }
  for (const { at, lines } of broken) {
    y += lineHeight * 0.7;
    ctx.fillStyle = printInk.ink;
    ctx.fillRect(x(at) - 1, y - 6, 2, 7);
    for (const line of lines) {
      y += lineHeight;
      write(line, '13px', printInk.ink, plot.left + 26);
    }
  }
  y += 10;
  for (const note of notes) {
    y += lineHeight;
    write(note, '13px', printInk.soft);
  }
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/png'));
}

/** A text in lines that are no wider than asked for, px, as it is written under the alarms; its own line breaks stay. */
function brokenText(ctx: CanvasRenderingContext2D, text: string, mostPx: number): string[] {
  ctx.font = '13px Barlow, sans-serif';
  return text.split('\n').flatMap((line) => {
    const lines: string[] = [];
    let open = '';
    for (const word of line.split(' ')) {
      const longer = open === '' ? word : `${open} ${word}`;
      if (open !== '' && ctx.measureText(longer).width > mostPx) {
        lines.push(open);
        open = word;
      } else open = longer;
    }
    return [...lines, open];
  });
}
