import type { Figure } from '@ebbline/shared/contract/live-feed';
import type { QualityReason } from '@ebbline/shared/contract/reading';

/** True where the unit has nothing to work this out from, now or ever. */
export const isAbsent = ({ value, age, reasons }: Pick<Figure, 'value' | 'age' | 'reasons'>): boolean =>
  value === null && age === null && reasons.includes('notApplicable');

const explained: readonly QualityReason[] = ['notApplicable', 'warming', 'undefined'];

/** True where a reason says all there is to say of a missing value: nothing is wrong, and no age belongs to it. */
export const isExplained = ({ value, reasons }: Pick<Figure, 'value' | 'reasons'>): boolean =>
  value === null && reasons.length > 0 && reasons.every((reason) => explained.includes(reason));
