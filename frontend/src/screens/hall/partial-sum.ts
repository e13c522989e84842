import { isAbsent } from '@ebbline/shared/contract/is-absent';
import type { Figure } from '@ebbline/shared/contract/live-feed';
import { sayReasons } from '../../text/words';

/** A sum over the loops of a hall, and of how many it is; the note is null where all are in it. */
export interface PartialSum {
  readonly figure: Figure;
  readonly note: string | null;
}

/** Says how many loops a sum counts and why not the others, in the place of the reason that some input is bad. */
export function partialSum(sum: Figure, parts: readonly Figure[]): PartialSum {
  const others = parts.filter(({ value, quality }) => value === null || quality === 'bad');
  if (others.length === 0) return { figure: sum, note: null };
  const counted = `${parts.length - others.length} of ${parts.length} units`;
  // Without a value the reasons of the sum are the loops' own, and stand beside it already.
  if (sum.value === null) return { figure: sum, note: counted };
  const reasons = sum.reasons.filter((reason) => reason !== 'inputBad');
  const figure: Figure = { ...sum, reasons, quality: reasons.length === 0 ? 'good' : sum.quality };
  // A unit without the sensors for it will never say more.
  const absent = others.some(isAbsent) ? ['not known there'] : [];
  const why = sayReasons([...new Set(others.filter((one) => !isAbsent(one)).flatMap(({ reasons }) => reasons))]);
  const said = [...absent, ...(why === '' ? [] : [why])].join('; ');
  return { figure, note: `${counted}; the ${others.length === 1 ? 'other' : 'others'}: ${said || 'not known'}` };
}
