import { z } from 'zod';
import { isoTimeSchema } from './reading';

/** Something an engineer is to know. It asks for no timely response, makes no sound, and is never counted as an alarm. */
export const alertSchema = z.object({
  id: z.string().describe('as an alarm id: `<unit, hall or gateway>:<entry>`'),
  unit: z.string().nullable(),
  hall: z.string().nullable(),
  entry: z.string(),
  title: z.string(),
  since: isoTimeSchema,
  value: z.number().nullable(),
  limit: z.number().nullable(),
  unit_of_measure: z.string().nullable(),
  where: z.string().nullable(),
  cause: z.string(),
  consequence: z.string(),
  action: z.string(),
  detail: z.string().nullable(),
});
export type Alert = z.infer<typeof alertSchema>;

export const alertListSchema = z.object({ time: isoTimeSchema, alerts: z.array(alertSchema) });
export type AlertList = z.infer<typeof alertListSchema>;
