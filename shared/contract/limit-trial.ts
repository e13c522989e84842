import { z } from 'zod';
import { prioritySchema } from './alarm';
import { alarmSettingsSchema, triedSettingsSchema } from './alarm-settings';
import { isoTimeSchema } from './reading';

/** A proposed setting, to be run over what was recorded; nothing that runs is changed by it. */
export const startTrialRequestSchema = z.strictObject({
  entry: z.string().min(1),
  units: z.array(z.string().min(1)).min(1).max(500),
  from: isoTimeSchema,
  to: isoTimeSchema,
  proposed: triedSettingsSchema,
});
export type StartTrialRequest = z.infer<typeof startTrialRequestSchema>;

/** One time in alarm. */
export const trialEpisodeSchema = z.object({
  unit: z.string(),
  part: z.string().nullable().describe('branch or plate'),
  from: isoTimeSchema,
  to: isoTimeSchema.nullable().describe('null: still in alarm at the end'),
  priority: prioritySchema.nullable().describe('null: told as an alert'),
  worst: z.number().nullable().describe('value furthest beyond the limit'),
  limit: z.number().nullable(),
});
export type TrialEpisode = z.infer<typeof trialEpisodeSchema>;

export const trialOutcomeSchema = z.object({
  settings: alarmSettingsSchema,
  raised: z.number().int(),
  perDay: z.number().describe('a unit and day'),
  secondsInAlarm: z.number(),
  longestSeconds: z.number(),
  shortestSeconds: z.number().nullable(),
  toldAgain: z
    .number()
    .int()
    .describe('times it would be told anew, were it acknowledged as soon as it is told; 0 where that is not set'),
  chatteringTimes: z.number().int().describe('times with three or more raised within 60 s'),
  episodes: z.array(trialEpisodeSchema).describe('the first thousand'),
  more: z.number().int().describe('episodes beyond those'),
});
export type TrialOutcome = z.infer<typeof trialOutcomeSchema>;

export const limitTrialSchema = z.object({
  id: z.string(),
  entry: z.string(),
  title: z.string(),
  units: z.array(z.string()),
  from: isoTimeSchema,
  to: isoTimeSchema,
  state: z.enum(['running', 'done', 'cancelled', 'failed']),
  method: z.enum(['stored', 'recomputed']).describe('stored: on the points as recorded; recomputed: all points anew'),
  progress: z.number().min(0).max(1),
  secondsLeft: z.number().nullable().describe('by the speed so far; null: not known yet'),
  unit_of_measure: z.string().nullable(),
  point: z.string().nullable().describe('the point that the limit is drawn beside; null: none'),
  live: trialOutcomeSchema.nullable(),
  proposed: trialOutcomeSchema.nullable(),
  secondsJudged: z.number().describe('unit-seconds with data'),
  secondsMissing: z.number().describe('unit-seconds without'),
  notes: z.array(z.string()).describe('what the trial can not know, and what went wrong'),
});
export type LimitTrial = z.infer<typeof limitTrialSchema>;
