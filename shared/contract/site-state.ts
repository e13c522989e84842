import { z } from 'zod';
import { isoTimeSchema } from './reading';

export const siteFaultSchema = z.object({
  line: z.number().int().nullable(),
  key: z.string(),
  message: z.string(),
});

/** Which site file is in force, and whether a newer one was refused. */
export const siteStateSchema = z.object({
  file: z.string(),
  loadedAt: isoTimeSchema,
  contentHash: z.string(),
  refused: z
    .object({ since: isoTimeSchema, faults: z.array(siteFaultSchema) })
    .nullable()
    .describe('a newer file that was refused whole; the one before stays in force'),
  warnings: z.array(siteFaultSchema),
});
export type SiteState = z.infer<typeof siteStateSchema>;

/** Nothing is to be told: the file of the program's environment is read anew. */
export const reloadSiteRequestSchema = z.strictObject({});

export const checkSiteRequestSchema = z.strictObject({ text: z.string().max(2_000_000) });
export const siteCheckSchema = z.object({
  accepted: z.boolean(),
  summary: z.string().nullable(),
  faults: z.array(siteFaultSchema),
  warnings: z.array(siteFaultSchema),
});
export type SiteCheck = z.infer<typeof siteCheckSchema>;
