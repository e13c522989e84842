import { z } from 'zod';
import { journalFactsSchema } from './journal-facts';
import { isoTimeSchema } from './reading';
import { operatorSchema } from './people';

/** Alarm states (ISA-18.2 / IEC 62682; our table in `backend/src/evaluation/alarm-lifecycle/transition-table.ts`). */
export const alarmStates = [
  'normal',
  'unacknowledged',
  'acknowledged',
  'returnedUnacknowledged',
  'latchedUnacknowledged',
  'latchedAcknowledged',
] as const;
export const alarmStateSchema = z.enum(alarmStates);
export type AlarmState = z.infer<typeof alarmStateSchema>;

export const prioritySchema = z.union([z.literal(1), z.literal(2), z.literal(3)]);
export type Priority = z.infer<typeof prioritySchema>;

/** One standing alarm. Only what the journal has committed is ever shown. */
export const alarmSchema = z.object({
  id: z
    .string()
    .describe('stable: `<unit, hall or gateway>:<entry>` and, where an entry judges many points, `:<point>`'),
  unit: z
    .string()
    .nullable()
    .describe('unit id; null for an alarm of a gateway that serves several units, or of a hall'),
  hall: z.string().nullable(),
  entry: z.string().describe('catalogue entry, such as MARGIN-1'),
  title: z.string(),
  state: alarmStateSchema,
  priority: prioritySchema,
  since: isoTimeSchema.describe('when the condition became true'),
  stateSince: isoTimeSchema,
  annunciatedAt: isoTimeSchema
    .optional()
    .describe('when it was last told: came to be unacknowledged; the time to respond counts from then'),
  value: z.number().nullable().describe('when raised'),
  limit: z.number().nullable(),
  unit_of_measure: z.string().nullable().describe('UCUM code of value and limit'),
  where: z.string().nullable().describe('the wetted point, branch, or gateway concerned'),
  cause: z.string(),
  consequence: z.string(),
  action: z.string().describe('what to do first'),
  detail: z
    .string()
    .nullable()
    .optional()
    .describe('what is known of this very case, in a sentence or two; follows the case while the alarm stands'),
  timeToRespondSeconds: z.number(),
  acknowledgedBy: z.string().nullable(),
  acknowledgedAt: isoTimeSchema.nullable(),
  foldedUnder: z.string().nullable().describe('id of the first-out alarm that this one follows from'),
  recorded: z
    .boolean()
    .optional()
    .describe('false: the journal refused this change, it is tried again; absent: recorded'),
});
export type Alarm = z.infer<typeof alarmSchema>;

export const alarmListSchema = z.object({ time: isoTimeSchema, alarms: z.array(alarmSchema) });
export type AlarmList = z.infer<typeof alarmListSchema>;

/** One line of the journal, in order of `sequence`, without gaps. */
export const journalRowSchema = z.object({
  sequence: z.number().int(),
  time: isoTimeSchema.describe('when it was recorded'),
  sourceTime: isoTimeSchema.describe('when it happened by the clock in force'),
  kind: z.enum(['transition', 'action', 'system']),
  alarm: z.string().nullable(),
  unit: z.string().nullable(),
  entry: z.string().nullable(),
  from: alarmStateSchema.nullable(),
  to: alarmStateSchema.nullable(),
  priority: prioritySchema.nullable(),
  value: z.number().nullable(),
  limit: z.number().nullable(),
  unit_of_measure: z.string().nullable(),
  where: z.string().nullable(),
  actor: z.string().nullable(),
  station: z.string().nullable().describe('from where the actor acted'),
  reason: z.string().nullable().describe('comment of the actor, or why the program did it'),
  hall: z.string().nullable().optional(),
  cause: z.string().nullable().optional().describe('stable word for what happened, such as `acknowledge`'),
  since: isoTimeSchema.nullable().optional().describe('when the condition became true, before the on-delay'),
  foldedUnder: z.string().nullable().optional().describe('id of the first-out alarm that it followed from'),
  facts: journalFactsSchema.nullable().optional().describe('what else is on record; null: nothing'),
  previousHash: z.string(),
  hash: z.string(),
});
export type JournalRow = z.infer<typeof journalRowSchema>;

export const journalPageSchema = z.object({
  rows: z.array(journalRowSchema),
  next: z
    .number()
    .int()
    .nullable()
    .describe(
      'pass as `after`, newest first as `before`, for the next page, which may hold few rows or none; null at the end',
    ),
});
export type JournalPage = z.infer<typeof journalPageSchema>;

export const acknowledgeRequestSchema = z.strictObject({
  operator: operatorSchema,
  comment: z.string().trim().max(1000).default(''),
});
export type AcknowledgeRequest = z.infer<typeof acknowledgeRequestSchema>;
