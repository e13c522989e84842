import type { Figure } from '@ebbline/shared/contract/live-feed';

/** A sum over the loops of a hall, and of how many it is; the note is null where all are in it. */
export interface PartialSum {
  readonly figure: Figure;
  readonly note: string | null;
}

/** Says how many loops a sum counts, in the place of the reason that some input is bad. */
export function partialSum(sum: Figure, parts: readonly Figure[]): PartialSum {
  const counted = parts.filter(({ value, quality }) => value !== null && quality !== 'bad').length;
  if (sum.value === null || counted === parts.length) return { figure: sum, note: null };
  const reasons = sum.reasons.filter((reason) => reason !== 'inputBad');
  const figure: Figure = { ...sum, reasons, quality: reasons.length === 0 ? 'good' : sum.quality };
  return { figure, note: `${counted} of ${parts.length} units; not known of the others` };
}
