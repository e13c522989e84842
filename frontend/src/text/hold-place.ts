import type { PrintedQuantity } from './format-quantity';

/** What a place has held so far: the longest whole part, and whether it ever was below nought. */
export interface HeldPlace {
  readonly unit: string;
  readonly whole: string;
  readonly below: boolean;
}

const minus = '−';

function wholeOf(number: string): string | null {
  const [whole = ''] = number.replace(minus, '').split('.');
  return /^\d[\d\u202f]*$/.test(whole) ? whole : null;
}

/** Remembers the widest number that stood in a place; another unit of measure begins anew, a word changes nothing. */
export function holdPlace(held: HeldPlace | undefined, { number, unit }: PrintedQuantity): HeldPlace | undefined {
  const whole = wholeOf(number);
  if (whole === null) return held;
  const before = held?.unit === unit ? held : { unit, whole: '', below: false };
  return {
    unit,
    whole: whole.length > before.whole.length ? whole : before.whole,
    below: before.below || number.startsWith(minus),
  };
}

/**
 * What stands unseen before a number, so that its digits and its unit stay where they were when it had more of them:
 * figures of one size are equally wide.
 */
export function padOf(held: HeldPlace | undefined, { number, unit }: PrintedQuantity): string {
  const whole = wholeOf(number);
  if (held === undefined || held.unit !== unit || whole === null) return '';
  const sign = held.below && !number.startsWith(minus) ? minus : '';
  return `${sign}${held.whole.slice(0, Math.max(0, held.whole.length - whole.length))}`;
}
