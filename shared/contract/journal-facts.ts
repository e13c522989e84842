import { z } from 'zod';
import { alarmModeSchema } from './alarm-mode';
import { alarmSettingsSchema, settingScopeSchema } from './alarm-settings';
import { isoTimeSchema, qualitySchema } from './reading';

/** Rows of before these could be set do not have them. */
const recordedSettingsSchema = alarmSettingsSchema.partial({ reAlarmAfterSeconds: true, action: true });

/** What a row of the journal says beside its columns; a member that the row has nothing to say of is left out. */
export const journalFactsSchema = z
  .object({
    quality: qualitySchema.describe('worst quality of what the alarm is judged by, when it changed'),
    class: z.string().describe('class of the alarm, as in the alarm list'),
    position: z.string().describe('operating position: the hall, or the site where the alarm is of none'),
    detail: z.string().describe('what was known of this very case'),
    fromMode: alarmModeSchema,
    toMode: alarmModeSchema,
    setAsideSince: isoTimeSchema.describe('when it was set aside'),
    setAsideUntil: isoTimeSchema.describe('when shelving ends by itself, or out of service is planned to end'),
    setAsideBy: z.string(),
    setAsideReason: z.string().describe('why it was set aside; said again where it ends'),
    minutes: z.number().describe('for how long it was shelved'),
    interimMeasures: z.string().describe('what watches the plant meanwhile'),
    setting: z
      .object({
        scope: settingScopeSchema,
        old: recordedSettingsSchema,
        new: recordedSettingsSchema,
        link: z.string(),
        approvedBy: z.string().optional().describe('the second person, where its class asks for one'),
      })
      .describe('what was set, or was proposed, from what to what, and where it was approved'),
    of: z.number().int().describe('sequence of the row that this one corrects, withdraws or takes over'),
    why: z.string().describe('why a note was corrected'),
    shift: z
      .object({ from: isoTimeSchema, to: isoTimeSchema, takerNamed: z.string() })
      .describe('which shift was handed over, and to whom, as typed'),
    program: z
      .object({
        version: z.string(),
        before: z
          .object({
            version: z.string(),
            startedAt: isoTimeSchema.nullable().describe('when it started, where it did not end in order'),
            endedAt: isoTimeSchema.nullable().describe('null: it did not end in order'),
          })
          .nullable()
          .describe('the run before this one; null: none is on record, or the row tells of an end'),
      })
      .describe('which program started or ended'),
  })
  .partial();
export type JournalFacts = z.infer<typeof journalFactsSchema>;
