const pattern = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;
const notFinite = /^[+-]?(?:nan|inf|infinity)$/i;

/** A decimal number as text → number; NaN for anything else (blank, hexadecimal, decimal comma, words). */
export const strictNumber = (text: string): number => (pattern.test(text) ? Number(text) : Number.NaN);

/** `NaN`, `inf` and the like: a sender's way to say that it has no value. */
export const saysNotFinite = (text: string): boolean => notFinite.test(text);
