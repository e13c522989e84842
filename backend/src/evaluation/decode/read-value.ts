import type { RefusalCode } from '../sample/acceptance';
import type { PointBinding } from '../site/compiled-site';
import { saysNotFinite, strictNumber } from './strict-number';

/** What was read: a number and null, or NaN and why. One object, written again for each value. */
export interface ReadValue {
  value: number;
  refusal: RefusalCode | null;
}

function refuse(into: ReadValue, code: RefusalCode): void {
  into.value = Number.NaN;
  into.refusal = code;
}

function take(into: ReadValue, value: number): void {
  if (!Number.isFinite(value)) {
    refuse(into, 'VALUE_NOT_FINITE');
    return;
  }
  into.value = value;
  into.refusal = null;
}

/**
 * A field of a payload → the number that the sender means, in the sender's unit of measure. Numbers may come
 * as text. Where the point has words (yes/no, mode) only these are taken.
 */
export function readValue(raw: unknown, words: PointBinding['words'], into: ReadValue): void {
  if (raw === undefined || raw === null) {
    refuse(into, 'FIELD_MISSING');
  } else if (words !== null) {
    const word =
      typeof raw === 'string' ? raw.trim() : typeof raw === 'number' || typeof raw === 'boolean' ? String(raw) : '';
    const meaning = words.get(word);
    if (meaning === undefined) refuse(into, 'VALUE_WORD_UNKNOWN');
    else take(into, meaning);
  } else if (typeof raw === 'number') {
    take(into, raw);
  } else if (typeof raw === 'string') {
    const text = raw.trim();
    const number = strictNumber(text);
    if (!Number.isNaN(number)) take(into, number);
    else refuse(into, saysNotFinite(text) ? 'VALUE_NOT_FINITE' : 'VALUE_NOT_NUMBER');
  } else {
    refuse(into, 'VALUE_NOT_NUMBER');
  }
}
