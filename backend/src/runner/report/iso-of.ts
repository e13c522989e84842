/** ISO 8601 UTC. @param ms finite */
export const isoOf = (ms: number): string => new Date(Math.round(ms)).toISOString();
