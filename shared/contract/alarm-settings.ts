import { z } from 'zod';

/** What may be set of a catalogue entry. Limits and deadband in `unit_of_measure` of the entry (UCUM), delays in seconds. */
export const alarmSettingsSchema = z.object({
  limit: z.number().nullable().describe('null: the entry has no number of its own'),
  low: z.number().nullable().describe('lower end of a band; null: none'),
  deadband: z.number(),
  onDelaySeconds: z.number().min(0),
  offDelaySeconds: z.number().min(0),
  enabled: z.boolean(),
});
export type AlarmSettings = z.infer<typeof alarmSettingsSchema>;

/** Only what is to differ. */
export const proposedSettingsSchema = z
  .strictObject({
    limit: z.number(),
    low: z.number(),
    deadband: z.number().min(0),
    onDelaySeconds: z
      .number()
      .min(0)
      .max(30 * 86_400),
    offDelaySeconds: z
      .number()
      .min(0)
      .max(30 * 86_400),
    enabled: z.boolean(),
  })
  .partial();
export type ProposedSettings = z.infer<typeof proposedSettingsSchema>;

/** For what a setting holds; the nearest wins: unit before hall before site before catalogue. */
export const settingScopeSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('site') }),
  z.strictObject({ kind: z.literal('hall'), id: z.string().min(1) }),
  z.strictObject({ kind: z.literal('unit'), id: z.string().min(1) }),
]);
export type SettingScope = z.infer<typeof settingScopeSchema>;
