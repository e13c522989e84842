import type { QualityReason } from '@ebbline/shared/contract/reading';
import { noValue } from './words';

/** What stands in place of a value that is missing; why stands beside it. */
export const missingWord = (reasons: readonly QualityReason[]): string =>
  reasons.includes('undefined') ? 'can’t be told' : noValue;
