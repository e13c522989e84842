import { z } from 'zod';

/** An alarm that is told anew sooner than this after it was acknowledged would be noise, s: own rule. */
export const leastReAlarmSeconds = 60;

const longestDelaySeconds = 30 * 86_400;

/** What may be set of a catalogue entry. Limits and deadband in `unit_of_measure` of the entry (UCUM), delays in seconds. */
export const alarmSettingsSchema = z.object({
  limit: z.number().nullable().describe('null: the entry has no number of its own'),
  low: z.number().nullable().describe('lower end of a band; null: none'),
  deadband: z.number(),
  onDelaySeconds: z.number().min(0),
  offDelaySeconds: z.number().min(0),
  reAlarmAfterSeconds: z
    .number()
    .nullable()
    .describe('how long after it was acknowledged it is told anew while its condition lasts; null: not at all'),
  enabled: z.boolean(),
  action: z.string().nullable().describe('first action by site procedure; null: that of the catalogue'),
});
export type AlarmSettings = z.infer<typeof alarmSettingsSchema>;

/** Only what is to differ. */
export const proposedSettingsSchema = z
  .strictObject({
    limit: z.number(),
    low: z.number(),
    deadband: z.number().min(0),
    onDelaySeconds: z.number().min(0).max(longestDelaySeconds),
    offDelaySeconds: z.number().min(0).max(longestDelaySeconds),
    reAlarmAfterSeconds: z.number().min(leastReAlarmSeconds).max(longestDelaySeconds).nullable(),
    enabled: z.boolean(),
    action: z.string().trim().min(1).max(500).nullable(),
  })
  .partial();
export type ProposedSettings = z.infer<typeof proposedSettingsSchema>;

/** What whoever asks for a change saw in force; members left out were not looked at. */
export const seenSettingsSchema = z.strictObject(alarmSettingsSchema.shape).partial();
export type SeenSettings = z.infer<typeof seenSettingsSchema>;

/** What can be tried over what was recorded: all but words. */
export const triedSettingsSchema = proposedSettingsSchema.omit({ action: true });
export type TriedSettings = z.infer<typeof triedSettingsSchema>;

/** For what a setting holds; the nearest wins: unit before hall before site before catalogue. */
export const settingScopeSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('site') }),
  z.strictObject({ kind: z.literal('hall'), id: z.string().min(1) }),
  z.strictObject({ kind: z.literal('unit'), id: z.string().min(1) }),
]);
export type SettingScope = z.infer<typeof settingScopeSchema>;
