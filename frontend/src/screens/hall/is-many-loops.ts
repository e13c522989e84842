/** From so many on the rows of a hall have no words, so that all of them can be overseen. */
const many = 25;
export const isManyLoops = (loops: number): boolean => loops >= many;
