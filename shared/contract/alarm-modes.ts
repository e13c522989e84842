import { z } from 'zod';
import { alarmStateSchema, prioritySchema } from './alarm';
import { alarmModeSchema } from './alarm-mode';
import { operatorSchema } from './people';
import { isoTimeSchema } from './reading';

export { alarmModes, alarmModeSchema, type AlarmMode } from './alarm-mode';

/** The longest that one shelving may last. */
export const longestShelvingMinutes = 8 * 60;

const reasonSchema = z.string().trim().min(3).max(1000);

export const shelveRequestSchema = z.strictObject({
  operator: operatorSchema,
  reason: reasonSchema,
  minutes: z.number().int().min(1).max(longestShelvingMinutes),
});
export type ShelveRequest = z.infer<typeof shelveRequestSchema>;

export const takeOutOfServiceRequestSchema = z.strictObject({
  operator: operatorSchema,
  reason: reasonSchema,
  interimMeasures: reasonSchema.describe('what watches the plant meanwhile'),
  plannedEnd: isoTimeSchema.nullable().describe('when it is meant to be back; it does not end by itself'),
});
export type TakeOutOfServiceRequest = z.infer<typeof takeOutOfServiceRequestSchema>;

/** Body of `unshelve` and `return-to-service`. */
export const bringBackRequestSchema = z.strictObject({
  operator: operatorSchema,
  comment: z.string().trim().max(1000).default(''),
});
export type BringBackRequest = z.infer<typeof bringBackRequestSchema>;

/** One alarm that is not told, why, and until when; its condition goes on being judged. */
export const setAsideAlarmSchema = z.object({
  id: z.string(),
  unit: z.string().nullable(),
  hall: z.string().nullable(),
  entry: z.string(),
  title: z.string(),
  where: z.string().nullable().describe('branch, plate, point or gateway; null: the unit or hall as a whole'),
  mode: z.enum(['shelved', 'suppressedByDesign', 'outOfService']),
  state: alarmStateSchema,
  active: z.boolean().describe('the condition holds now'),
  priority: prioritySchema,
  since: isoTimeSchema.describe('since when it is set aside'),
  until: isoTimeSchema
    .nullable()
    .describe('shelved: when it ends by itself; out of service: when it is planned to end'),
  by: z.string().nullable().describe('who set it aside; null: by design'),
  reason: z.string(),
  interimMeasures: z.string().nullable(),
});
export type SetAsideAlarm = z.infer<typeof setAsideAlarmSchema>;
export const setAsideListSchema = z.object({ time: isoTimeSchema, alarms: z.array(setAsideAlarmSchema) });
export type SetAsideList = z.infer<typeof setAsideListSchema>;

export const findAlarmsQuerySchema = z.strictObject({
  search: z
    .string()
    .trim()
    .min(1)
    .max(200)
    .describe('words of the entry, its title, the unit, the hall, the branch, plate or point; each must be found'),
});

/** An alarm that this site can have, standing or not, as whoever sets it aside has to know it. */
export const findableAlarmSchema = setAsideAlarmSchema
  .pick({ id: true, unit: true, hall: true, entry: true, title: true, where: true, active: true, priority: true })
  .extend({
    mode: alarmModeSchema,
    longestShelvingMinutes: z.number().int().describe('for how long it may be shelved at once'),
  });
export type FindableAlarm = z.infer<typeof findableAlarmSchema>;
export const foundAlarmsSchema = z.object({
  time: isoTimeSchema,
  alarms: z.array(findableAlarmSchema),
  more: z.boolean().describe('there are more, or not all were looked at: name the unit, or more words'),
});
export type FoundAlarms = z.infer<typeof foundAlarmsSchema>;

/** Several at once, under one comment; each is recorded by itself, and each answer stands by itself. */
export const acknowledgeManyRequestSchema = z.strictObject({
  operator: operatorSchema,
  comment: z.string().trim().max(1000).default(''),
  alarms: z.array(z.string().min(1)).min(1).max(500),
});
export type AcknowledgeManyRequest = z.infer<typeof acknowledgeManyRequestSchema>;
export const acknowledgeManyReplySchema = z.object({
  answers: z.array(
    z.object({
      id: z.string(),
      done: z.boolean(),
      code: z.string().nullable(),
      message: z.string().nullable().describe('why not; null where it was done'),
    }),
  ),
});
export type AcknowledgeManyReply = z.infer<typeof acknowledgeManyReplySchema>;
