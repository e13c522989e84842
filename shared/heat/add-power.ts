import { watt, type Watt } from '../units/quantity';

/** Adds one part to a sum of powers, W. A part that is no number makes the sum none: a partial sum is never passed off as a whole. */
export const addPower = (sum: Watt, part: Watt): Watt => watt(sum + part);
