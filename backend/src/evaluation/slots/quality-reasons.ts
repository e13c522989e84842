import { qualityOfReason, qualityReasons, type Quality, type QualityReason } from '@ebbline/shared/contract/reading';

/** Reasons are kept as bits, one a row of `qualityReasons`, so that a slot's reasons are one integer. */
export const reasonBit = Object.fromEntries(qualityReasons.map((reason, i) => [reason, 1 << i])) as Readonly<
  Record<QualityReason, number>
>;

const bits = (quality: Quality): number =>
  qualityReasons.filter((r) => qualityOfReason[r] === quality).reduce((sum, r) => sum | reasonBit[r], 0);

/** Any of these bits makes a value bad. */
export const badBits = bits('bad');
/** Any of these bits, with none of the bad ones, makes a value uncertain. */
export const uncertainBits = bits('uncertain');

export const qualityOf = (reasons: number): Quality =>
  (reasons & badBits) !== 0 ? 'bad' : (reasons & uncertainBits) !== 0 ? 'uncertain' : 'good';

export const reasonList = (reasons: number): QualityReason[] =>
  qualityReasons.filter((r) => (reasons & reasonBit[r]) !== 0);
