import { z } from 'zod';
import { isoTimeSchema, readingSchema } from './reading';

/** One measured point of a unit or its hall, and how its telemetry fares. */
export const setupPointSchema = z.object({
  reading: readingSchema,
  title: z.string(),
  topic: z.string(),
  path: z.array(z.string()).describe('keys in the payload; empty for a bare number'),
  period: z.number().describe('expected s between samples'),
  arriving: z.enum(['arriving', 'silent', 'never']),
});
export type SetupPoint = z.infer<typeof setupPointSchema>;

/** An entry of the alarm catalogue that can not be judged for a unit. */
export const notWatchedSchema = z.object({
  entry: z.string(),
  title: z.string(),
  lacks: z
    .array(z.string())
    .describe(
      'titles of points that it rests on and the unit does not measure; none: another shape, or a figure of the site file',
    ),
});
export type NotWatched = z.infer<typeof notWatchedSchema>;

export const setupSchema = z.object({
  unit: z.string(),
  time: isoTimeSchema.nullable(),
  points: z.array(setupPointSchema),
  notWatched: z.array(notWatchedSchema).describe('what the unit can raise no alarm of'),
});
export type Setup = z.infer<typeof setupSchema>;

/** The newest payload of one topic, as it came. Kept only for topics that the site file names. */
export const lastPayloadSchema = z.object({
  topic: z.string(),
  receivedAt: isoTimeSchema.nullable().describe('null: nothing has come yet'),
  bytes: z.number().int(),
  text: z.string().nullable().describe('at most 4096 bytes as UTF-8; null where it is not text'),
  hex: z.string().nullable().describe('the first 256 bytes, where it is not text'),
  cut: z.boolean(),
  refusal: z.object({ code: z.string(), message: z.string() }).nullable(),
});
export type LastPayload = z.infer<typeof lastPayloadSchema>;

export const lastPayloadQuerySchema = z.strictObject({ topic: z.string().min(1).max(65_535) });

/** A limit as it is drawn beside a point. */
export const limitLineSchema = z.object({
  entry: z.string(),
  title: z.string(),
  point: z.string(),
  side: z.enum(['below', 'above']).describe('the side on which the alarm stands'),
  limit: z.number(),
  unit_of_measure: z.string(),
});
export type LimitLine = z.infer<typeof limitLineSchema>;
export const limitListSchema = z.object({ unit: z.string(), limits: z.array(limitLineSchema) });
export type LimitList = z.infer<typeof limitListSchema>;
