/** Why a place could be a point, or could hardly be. */
export interface Reason {
  readonly speaks: 'for' | 'against';
  /** Half a sentence that a person can check. */
  readonly text: string;
}

/** What one kind of evidence comes to; null: the place can't be this point. */
export interface Weighed {
  readonly score: number;
  readonly reasons: readonly Reason[];
}

export const nothing: Weighed = { score: 0, reasons: [] };
export const speaksFor = (score: number, text: string): Weighed => ({ score, reasons: [{ speaks: 'for', text }] });
export const speaksAgainst = (score: number, text: string): Weighed => ({
  score,
  reasons: [{ speaks: 'against', text }],
});
export const together = (all: readonly Weighed[]): Weighed => ({
  score: all.reduce((sum, { score }) => sum + score, 0),
  reasons: all.flatMap(({ reasons }) => reasons),
});
