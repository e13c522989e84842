import { z } from 'zod';
import { prioritySchema } from './alarm';
import { isoTimeSchema } from './reading';

/**
 * So many words at most: each one more that all rows hold is walked through all rows at once, and what else the program does waits.
 * A word is what stands between two characters that are neither letter nor digit, as the index has it.
 */
const mostWords = 10;
const wordsIn = (text: string): number => text.match(/[\p{L}\p{N}\p{Co}]+/gu)?.length ?? 0;

const named = z.string().min(1).max(200);

/** So many rows at most a page, and so many where nothing is said. */
export const journalRowsAPage = 500;

/** Which rows; every member narrows. */
export const journalFilterSchema = z.strictObject({
  from: isoTimeSchema.optional().describe('rows that happened from then on'),
  to: isoTimeSchema.optional().describe('rows that happened before'),
  unit: named.optional(),
  hall: named.optional(),
  entry: named.optional().describe('catalogue entry, such as MARGIN-1'),
  alarm: named.optional().describe('id of an alarm, permit or test'),
  kind: z.enum(['transition', 'action', 'system']).optional(),
  actor: named.optional().describe('who did it, by the whole name'),
  priority: z.coerce.number().int().pipe(prioritySchema).optional(),
  text: z
    .string()
    .trim()
    .max(200)
    .regex(/[\p{L}\p{N}]/u, 'must hold a letter or a digit')
    .refine((text) => wordsIn(text) <= mostWords, `must hold ${mostWords} words at most`)
    .optional()
    .describe(
      'beginnings of words (of one letter: the word) in alarm, place, actor, station, cause and reason; all of them must be there, ten at most',
    ),
});
export type JournalFilter = z.infer<typeof journalFilterSchema>;

export const journalQuerySchema = journalFilterSchema.extend({
  order: z
    .enum(['oldest', 'newest'])
    .optional()
    .describe('which row comes first; with `before` the newest, else the oldest where left out'),
  after: z.coerce.number().int().min(0).optional().describe('oldest first: `next` of the page before'),
  before: z.coerce.number().int().min(1).optional().describe('newest first: `next` of the page before'),
  limit: z.coerce.number().int().min(1).max(journalRowsAPage).default(journalRowsAPage).describe('rows at most'),
});

export const journalExportQuerySchema = journalFilterSchema.extend({ format: z.enum(['csv', 'json']) });
