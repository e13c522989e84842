export type { Clock } from '@ebbline/shared/clock/clock';
export const CLOCK = Symbol('Clock');
