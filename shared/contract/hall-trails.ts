import { z } from 'zod';
import { isoTimeSchema } from './reading';

/** Of so many minutes a trail is made, the one that runs among them. */
export const trailMinutes = 60;

const minutesSchema = z
  .array(z.number().nullable())
  .length(trailMinutes)
  .describe('Pa absolute, a minute each, the oldest first, the one that runs last; null: nothing was seen');

/**
 * Lowest and highest wetted pressure of each minute of the last hour, of every loop of a hall. Sent once: who shows it goes on
 * with the lowest and highest of each frame.
 */
export const hallTrailsSchema = z.object({
  hall: z.string(),
  minute: isoTimeSchema.nullable().describe('begin of the minute that runs; null: no time is in force yet'),
  trails: z.array(z.object({ unit: z.string(), lowestPa: minutesSchema, highestPa: minutesSchema })),
});
export type HallTrails = z.infer<typeof hallTrailsSchema>;
/** The last hour of one loop. */
export type Trail = Pick<HallTrails['trails'][number], 'lowestPa' | 'highestPa'>;
