import { z } from 'zod';
import { isoTimeSchema } from './reading';
import { siteCheckSchema } from './site-state';

/** The longest that is listened at a time, s; it ends by itself. */
export const longestListeningSeconds = 900;

export const listenRequestSchema = z.strictObject({
  filter: z
    .string()
    .min(1)
    .max(500)
    .describe('MQTT topic filter, such as `works/#`; topics of Ebbline itself are never listened to'),
});
export const stopListeningRequestSchema = z.strictObject({});

export const mappingQuerySchema = z.strictObject({
  unit: z.string().min(1).optional().describe('propose points of this unit and its hall alone; of any where left out'),
});

export const mappingReasonSchema = z.object({ speaks: z.enum(['for', 'against']), text: z.string() });

export const mappingProposalSchema = z.object({
  kind: z.enum(['hall', 'unit']),
  holder: z.string(),
  point: z.string(),
  title: z.string(),
  grade: z.enum(['likely', 'possible']),
  reasons: z.array(mappingReasonSchema),
  line: z.string().describe('as it stands under `points` of the hall or unit in a site file'),
  needs: z.array(z.string()).describe('what can not be told from what arrives, and has to be put into the line'),
});
export type MappingProposal = z.infer<typeof mappingProposalSchema>;

/** A place of what was heard that is no point yet. */
export const heardPlaceSchema = z.object({
  topic: z.string(),
  path: z.array(z.string()),
  count: z.number().int(),
  latest: z.string(),
  seen: z.string().describe('least to most, or the words'),
  proposals: z.array(mappingProposalSchema).describe('the likeliest first; empty: nothing speaks for a point'),
});
export type HeardPlaceShown = z.infer<typeof heardPlaceSchema>;

/** `GET /api/mapping`: what was heard on topics beside the site file, and which points it could be. */
export const mappingSchema = z.object({
  time: isoTimeSchema,
  listening: z
    .object({
      filter: z.string(),
      by: z.string(),
      since: isoTimeSchema,
      until: isoTimeSchema.describe('it ends by itself then'),
      over: z.boolean().describe('it has ended; what was heard is kept until the next one'),
      trouble: z.string().nullable().describe('why nothing can be heard'),
    })
    .nullable(),
  messages: z.number().int(),
  notLookedAt: z.number().int().describe('messages that came faster than they are looked at'),
  leftOut: z.number().int().describe('values at places for which there was no room'),
  mapped: z.number().int().describe('places of the site file on these topics'),
  places: z.array(heardPlaceSchema),
});
export type Mapping = z.infer<typeof mappingSchema>;

export const tryLinesRequestSchema = z.strictObject({
  lines: z.string().max(200_000).describe('YAML with `units` or `halls` and their `points`, as a site file has them'),
});

/** What would be said of the site file in force with these lines in it. Nothing comes into force by asking. */
export const triedLinesSchema = z.object({
  text: z.string().nullable().describe('the whole file with the lines; null: they could not be put in'),
  check: siteCheckSchema,
});
export type TriedLines = z.infer<typeof triedLinesSchema>;

export const mappingFaults = ['FILTER_MALFORMED', 'LISTENING_ALREADY'] as const;
export type MappingFault = (typeof mappingFaults)[number];
