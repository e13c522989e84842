import type {
  HandCorrectionRequest,
  HandEntry,
  HandEntryList,
  HandEntryRequest,
  HandWithdrawalRequest,
} from '@ebbline/shared/contract/hand-entry';
import { handEntryListSchema, handEntrySchema } from '@ebbline/shared/contract/hand-entry';
import type { WaterQuality } from '@ebbline/shared/contract/water-quality';
import { waterQualitySchema } from '@ebbline/shared/contract/water-quality';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

const unitPath = (unit: string): string => `/api/units/${encodeURIComponent(unit)}`;

/** Every parameter of a unit's water, its band, and when a person is to look again. */
export const readWater = (unit: string): Promise<Result<WaterQuality>> =>
  request(`${unitPath(unit)}/water`, waterQualitySchema);

export const readHandEntries = (unit: string): Promise<Result<HandEntryList>> =>
  request(`${unitPath(unit)}/hand-entries`, handEntryListSchema);

/** Resolves with the entry as the journal holds it now. */
export const enterByHand = (unit: string, wish: HandEntryRequest): Promise<Result<HandEntry>> =>
  request(`${unitPath(unit)}/hand-entries`, handEntrySchema, { body: wish });

/** Another entry takes the place of one. */
export const correctHandEntry = (
  unit: string,
  entry: string,
  wish: HandCorrectionRequest,
): Promise<Result<HandEntry>> =>
  request(`${unitPath(unit)}/hand-entries/${encodeURIComponent(entry)}/correct`, handEntrySchema, { body: wish });

/** Nothing takes the place of an entry. Resolves with the entry that says who withdrew it and why. */
export const withdrawHandEntry = (
  unit: string,
  entry: string,
  wish: HandWithdrawalRequest,
): Promise<Result<HandEntry>> =>
  request(`${unitPath(unit)}/hand-entries/${encodeURIComponent(entry)}/withdraw`, handEntrySchema, { body: wish });
