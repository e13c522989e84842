/**
 * A frame of a hall is as long as the hall has units, and each unit changes it: of a large one the frames are fewer. A dozen units
 * are told as they come, two hundred once a second. ms
 */
export const hallPaceMs = (units: number): number => Math.min(1000, units * 5);
