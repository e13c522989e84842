import type { Gap } from './strip-geometry';

/** Of a digit, plain and heavy, with room to spare. px */
const digitPx = 7.5;
const heavyDigitPx = 9;
/** From the gap to a number beside it. */
const asidePx = 5;
/** What the mark on the bar's end takes up beside the gap. */
const markPx = 27;

export interface PlacedLabel {
  readonly x: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** True where there was no room but over the bar: it then needs a ground of its own. */
  readonly overBar: boolean;
}

/** In the middle of its gap; else over the wall; else over the bar, past the mark on its end. */
export function placeLabel(side: 'left' | 'right', gap: Gap, label: string, stripWidth: number): PlacedLabel {
  const end = gap.x + gap.width;
  if (!gap.tooSmall && gap.width >= label.length * digitPx + 4)
    return { x: gap.x + gap.width / 2, anchor: 'middle', overBar: false };
  const wide = label.length * (gap.tooSmall ? heavyDigitPx : digitPx);
  const mark = gap.tooSmall ? markPx : asidePx;
  if (side === 'left') {
    if (gap.x - asidePx >= wide) return { x: gap.x - asidePx, anchor: 'end', overBar: false };
    return { x: end + mark, anchor: 'start', overBar: true };
  }
  if (end + asidePx + wide <= stripWidth) return { x: end + asidePx, anchor: 'start', overBar: false };
  return { x: gap.x - mark, anchor: 'end', overBar: true };
}
