/**
 * Text as the database gives it back: well-formed Unicode (a lone surrogate has no UTF-8 form) and
 * without U+0000, at which the database client cuts a text off. Both become U+FFFD, before hashing.
 */
export function storedText(text: string): string;
export function storedText(text: string | null): string | null;
export function storedText(text: string | null): string | null {
  return text === null ? null : Buffer.from(text, 'utf8').toString('utf8').replaceAll('\0', '\uFFFD');
}

/** A number that SQLite keeps as it is; NaN and the infinities have no JSON form and become null. −0 becomes 0. */
export function storedNumber(value: number | null): number | null {
  return value === null || !Number.isFinite(value) ? null : value + 0;
}
