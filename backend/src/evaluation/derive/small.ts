import { coverageFactor } from '@ebbline/shared/uncertainty/combine';

/**
 * Whether a difference (or a flow, or a power) is less than twice its own standard uncertainty: what is divided by it is
 * undefined (own rule, after the coverage factor of GUM 6.3.3). False where the uncertainty is not known.
 */
export const isSmall = (difference: number, u: number): boolean => Math.abs(difference) < coverageFactor * u;
