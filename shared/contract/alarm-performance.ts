import { z } from 'zod';
import { prioritySchema } from './alarm';
import { proposedSettingsSchema } from './alarm-settings';
import { isoTimeSchema } from './reading';

export const performanceQuerySchema = z.strictObject({
  from: isoTimeSchema.optional().describe('30 days before `to` where left out'),
  to: isoTimeSchema.optional().describe('now where left out'),
  hall: z.string().optional().describe('one hall; the whole site where left out'),
});
export const performanceExportQuerySchema = performanceQuerySchema.extend({ format: z.enum(['csv', 'json']) });

/** One figure beside what is aimed at. */
export const performanceFigureSchema = z.object({
  id: z.string().describe('stable, such as `annunciationsPerDay`'),
  title: z.string(),
  value: z.number().nullable().describe('null: nothing to reckon it from'),
  unit: z.string().describe('such as `a day`, `%`, `s`'),
  acceptable: z.number().nullable(),
  limit: z.number().nullable(),
  verdict: z.enum(['within', 'between', 'beyond', 'noTarget', 'nothing']),
  band: z
    .string()
    .nullable()
    .optional()
    .describe('what the source calls such a value; null or left out: it names no bands'),
  source: z.string(),
});
export type PerformanceFigure = z.infer<typeof performanceFigureSchema>;

const namedAlarmSchema = z.object({
  alarm: z.string(),
  entry: z.string(),
  title: z.string(),
  unit: z.string().nullable(),
  annunciations: z.number().int(),
});

/** A setting reckoned from what was recorded; to be tried before it is used. */
export const settingProposalSchema = z.object({
  set: proposedSettingsSchema,
  unit_of_measure: z.string().nullable(),
  why: z.string().describe('how it was reckoned, in a sentence'),
});

export const floodSchema = z.object({
  from: isoTimeSchema,
  to: isoTimeSchema.nullable().describe('null: goes on'),
  annunciations: z.number().int(),
  mostInTenMinutes: z.number().int(),
  firstOuts: z
    .array(namedAlarmSchema.omit({ annunciations: true }))
    .describe('in order of time; what follows them is left out'),
});
export type Flood = z.infer<typeof floodSchema>;

const spreadSchema = z.object({
  priority: prioritySchema,
  count: z.number().int(),
  medianSeconds: z.number().nullable(),
  p90Seconds: z.number().nullable(),
});

/** How well the alarm system served one operating position: counted are annunciations, not rows of the journal. */
export const alarmPerformanceSchema = z.object({
  from: isoTimeSchema.describe('not before the first row of the journal'),
  to: isoTimeSchema,
  hall: z.string().nullable(),
  days: z.number(),
  enough: z.boolean().describe('false: less than 30 days, too short for a statement'),
  annunciations: z.number().int(),
  figures: z.array(performanceFigureSchema),
  mix: z.array(
    z.object({
      priority: prioritySchema,
      annunciations: z.number().int(),
      share: z.number().describe('%'),
      target: z.number().describe('%'),
    }),
  ),
  mostFrequent: z.array(namedAlarmSchema.extend({ share: z.number().describe('%') })).describe('ten at most'),
  chattering: z.array(
    namedAlarmSchema.extend({
      times: z.number().int().describe('times with three or more within 60 s'),
      proposal: settingProposalSchema.nullable(),
    }),
  ),
  fleeting: z.array(
    namedAlarmSchema.extend({
      times: z.number().int().describe('gone before anyone could act'),
      medianSeconds: z.number(),
      proposal: settingProposalSchema.nullable(),
    }),
  ),
  stale: z.array(namedAlarmSchema.omit({ annunciations: true }).extend({ since: isoTimeSchema, hours: z.number() })),
  floods: z.array(floodSchema),
  acknowledging: z.array(spreadSchema).describe('from annunciation to acknowledgement'),
  clearing: z.array(spreadSchema).describe('from annunciation to the end of the condition'),
  perHour: z.array(z.object({ from: isoTimeSchema, annunciations: z.number().int() })).describe('hours with any'),
});
export type AlarmPerformance = z.infer<typeof alarmPerformanceSchema>;
