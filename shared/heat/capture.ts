import type { Watt } from '../units/quantity';

/**
 * Share of a power that leaves in the water: heat removed ÷ power. Which power (chip, server, rack) is the
 * caller's to say. Above 1 is possible: a pump's work, or other heat, is in the water too.
 */
export const capture = (heatRemoved: Watt, power: Watt): number => heatRemoved / power;

/** More heat than twice the power, or heat that goes back, is told by no sound plant: proposal of this project. */
const mostPlausible = 2;

/** Whether meters can be right that give such a share; else one of them fails, or they measure different things. */
export const isPlausibleCapture = (share: number): boolean => share >= 0 && share <= mostPlausible;
