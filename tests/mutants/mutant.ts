/** A fault that is planted into a pure room to see whether the tests find it. */
export interface Mutant {
  readonly id: string;
  /** From the project root. */
  readonly file: string;
  /** Stands in the file exactly once. */
  readonly text: string;
  readonly becomes: string;
  /** What someone could do wrong here, and what it would cost. */
  readonly why: string;
  /** Files or folders below `tests` that are to find it; all tests of the pure rooms are asked where they do not. */
  readonly tests: readonly string[];
}

/** The source with the fault in it, or null where its text does not stand there exactly once. */
export function planted(source: string, { text, becomes }: Pick<Mutant, 'text' | 'becomes'>): string | null {
  const [before, after, ...more] = source.split(text);
  return before === undefined || after === undefined || more.length > 0 ? null : before + becomes + after;
}
