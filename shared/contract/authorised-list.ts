import { z } from 'zod';
import { fail, ok, type Result } from '../errors/result';
import { shapeFaults, type ShapeFault } from './shape-faults';
import { entryLimitsSchema } from './site-file-limits';

const text = (what: string) =>
  z
    .string({ error: `expected ${what}` })
    .trim()
    .min(1, `expected ${what}`)
    .max(500);
const day = (what: string) => z.iso.date({ error: `expected ${what}, as 2031-05-28` });

/**
 * How an entry is authorised to be set at one place; written as in a site file. Of a limit, a low end or `reAlarmAfter`, `none`
 * says that there is none; an action `~` is that of the catalogue.
 */
export const authorisedSettingsSchema = entryLimitsSchema
  .pick({ limit: true, low: true, deadband: true, onDelay: true, offDelay: true, reAlarmAfter: true, enabled: true })
  .extend({
    reAlarmAfter: z.string().optional().describe('As in the site file, or `none`.'),
    action: z.string().trim().min(1).max(500).nullable().optional(),
  });
export type AuthorisedSettings = z.infer<typeof authorisedSettingsSchema>;

const placesSchema = z.record(z.string(), authorisedSettingsSchema);

export const authorisedEntrySchema = z.strictObject({
  owner: text('who answers for this alarm').optional().describe('Who answers for it; left out: that of its class.'),
  reviewBy: day('the day of its next review')
    .optional()
    .describe('Day of the next review; left out: by its class, from the day of the approval.'),
  changeLink: text('where the change was approved').optional().describe('Where its last change was approved.'),
  site: authorisedSettingsSchema.optional().describe('At the whole site; keys left out: as in the catalogue.'),
  halls: placesSchema.optional().describe('At halls, by their ids; keys left out: as at the site.'),
  units: placesSchema.optional().describe('At units, by their ids; keys left out: as at their hall.'),
});
export type AuthorisedEntryInFile = z.infer<typeof authorisedEntrySchema>;

/** The list of alarms as people have authorised it. An entry that it does not name is authorised as the catalogue has it. */
export const authorisedListSchema = z.strictObject({
  site: text('the id of the site').describe('The id of the site that it is of.'),
  version: text('a version in quotes, such as "3"').describe('Which version of the list this is.'),
  approvedBy: text('who approved this list').describe('Who approved it.'),
  approvedOn: day('the day of the approval').describe('The day on which it was approved.'),
  entries: z.record(z.string(), authorisedEntrySchema).describe('By the entries of the catalogue.'),
});
export type AuthorisedListInFile = z.infer<typeof authorisedListSchema>;

const knownKeysAt = (path: readonly (string | number)[]): readonly string[] =>
  Object.keys(
    (path.length === 0 ? authorisedListSchema : path.length === 2 ? authorisedEntrySchema : authorisedSettingsSchema)
      .shape,
  );

/** Checks keys and types of a parsed list; all faults at once. */
export function checkAuthorisedList(document: unknown): Result<AuthorisedListInFile, readonly ShapeFault[]> {
  const parsed = authorisedListSchema.safeParse(document);
  return parsed.success ? ok(parsed.data) : fail(shapeFaults(parsed.error.issues, document, knownKeysAt));
}
