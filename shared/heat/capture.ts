import type { Watt } from '../units/quantity';

/**
 * Share of a power that leaves in the water: heat removed ÷ power. Which power (chip, server, rack) is the
 * caller's to say. Above 1 is possible: a pump's work, or other heat, is in the water too.
 */
export const capture = (heatRemoved: Watt, power: Watt): number => heatRemoved / power;
