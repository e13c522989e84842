import { z } from 'zod';
import { isoTimeSchema } from './reading';

/** Layout of the manifest itself; another number is another program's. */
export const backUpFormat = 1;

/** A path within the back-up, written with `/`, that leads nowhere else. */
const nameSchema = z.string().regex(/^[A-Za-z0-9_-][A-Za-z0-9._-]*(\/[A-Za-z0-9_-][A-Za-z0-9._-]*)*$/);
const schemaVersion = z.number().int().positive();

/** What a back-up holds, and by what it is known to be whole. Written last; a folder without it is no back-up. */
export const backUpManifestSchema = z.object({
  format: z.literal(backUpFormat),
  program: z.string(),
  writtenAt: isoTimeSchema,
  schemas: z.record(z.string(), schemaVersion).describe('version of the layout of each store that is in it'),
  journal: z.object({
    rows: z.number().int().nonnegative(),
    sequence: z.number().int().nonnegative(),
    hash: z.string().regex(/^[0-9a-f]{64}$/),
    brokenAt: z.number().int().nullable().describe('first row that was not as it was written, at the time of writing'),
  }),
  files: z
    .array(
      z.object({
        name: nameSchema,
        bytes: z.number().int().nonnegative(),
        sha256: z.string().regex(/^[0-9a-f]{64}$/),
      }),
    )
    .min(1),
});
export type BackUpManifest = z.infer<typeof backUpManifestSchema>;
