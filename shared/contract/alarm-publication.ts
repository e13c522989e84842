import { z } from 'zod';
import { alarmSchema, alarmStateSchema } from './alarm';
import { alarmModeSchema } from './alarm-mode';
import { isoTimeSchema } from './reading';

/** What is told of one alarm over MQTT (backend/docs/alarm-publication.md). Members may be added; none changes its meaning under the same format. */
export const alarmPublicationSchema = z.object({
  format: z.literal(1),
  site: z.string(),
  alarm: alarmSchema.describe('as GET /api/alarms gives it; `normal` once it has gone'),
  setAside: z
    .object({
      mode: alarmModeSchema.exclude(['inService']),
      since: isoTimeSchema,
      until: isoTimeSchema
        .nullable()
        .describe('shelved: when it ends by itself; out of service: when it is planned to end'),
      by: z.string().nullable().describe('null: by design'),
      reason: z.string(),
    })
    .nullable()
    .describe('why nobody is called by it, though its condition goes on being judged; null: in service'),
  change: z
    .object({
      from: alarmStateSchema,
      cause: z.string().describe('such as conditionTrue, conditionClear, acknowledge, shelve'),
      at: isoTimeSchema.describe('by the clock in force'),
      by: z.string().nullable().describe('who did it; null: the program'),
    })
    .nullable()
    .describe('what made this message; null: told again as it stands, as after a restart'),
});
export type AlarmPublication = z.infer<typeof alarmPublicationSchema>;
