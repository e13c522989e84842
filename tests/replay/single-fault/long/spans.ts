/** s. */
export const minutes = 60;
export const hours = 3600;
