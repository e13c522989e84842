import { isAbsent } from '@ebbline/shared/contract/is-absent';
import type { Figure } from '@ebbline/shared/contract/live-feed';
import type { QualityReason } from '@ebbline/shared/contract/reading';

const explained: readonly QualityReason[] = ['notApplicable', 'notSet', 'warming', 'undefined'];

/** True where a reason says all there is to say of a missing value: nothing is wrong, and no age belongs to it. */
export const isExplained = ({ value, reasons }: Pick<Figure, 'value' | 'reasons'>): boolean =>
  value === null && reasons.length > 0 && reasons.every((reason) => explained.includes(reason));

/** True where an age belongs to it: there is a value or was one, or its sender does not tell when; not where nothing ever came. */
export const hasAge = (figure: Pick<Figure, 'value' | 'age' | 'reasons'>): boolean =>
  !isExplained(figure) && (figure.value !== null || figure.age !== null);

/** True where there should be a value and is none: why stands in its place. */
export const isMissing = (figure: Pick<Figure, 'value' | 'age' | 'reasons'>): boolean =>
  figure.value === null && !isAbsent(figure) && !isExplained(figure);
