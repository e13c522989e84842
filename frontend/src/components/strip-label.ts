import type { Gap } from './strip-geometry';

/** Of a digit, plain and heavy, with room to spare. px */
const digitPx = 7.5;
const heavyDigitPx = 8.2;
/** From the gap to a number beside it. */
const asidePx = 5;
/** What the mark on the bar's end takes up beside the gap. */
const markPx = 27;

export interface PlacedLabel {
  readonly x: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** True where there was no room but over the bar: it then needs a ground of its own. */
  readonly overBar: boolean;
  /** About as wide as the number, px. */
  readonly wide: number;
}

/** In the middle of its gap; else over the wall; else over the bar, past the mark on its end. */
export function placeLabel(side: 'left' | 'right', gap: Gap, label: string, stripWidth: number): PlacedLabel {
  const end = gap.x + gap.width;
  const wide = label.length * (gap.tooSmall ? heavyDigitPx : digitPx);
  if (!gap.tooSmall && gap.width >= wide + 4)
    return { x: gap.x + gap.width / 2, anchor: 'middle', overBar: false, wide };
  const mark = gap.tooSmall ? markPx : asidePx;
  if (side === 'left') {
    if (gap.x - asidePx >= wide) return { x: gap.x - asidePx, anchor: 'end', overBar: false, wide };
    return { x: end + mark, anchor: 'start', overBar: true, wide };
  }
  if (end + asidePx + wide <= stripWidth) return { x: end + asidePx, anchor: 'start', overBar: false, wide };
  return { x: gap.x - mark, anchor: 'end', overBar: true, wide };
}
