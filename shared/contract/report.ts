import { z } from 'zod';
import { alarmStateSchema, prioritySchema } from './alarm';
import { alarmPerformanceSchema, floodSchema } from './alarm-performance';
import { energyReportSchema } from './energy';
import { handMethodSchema } from './hand-entry';
import { handoverSchema } from './handover';
import { noteSchema } from './notes';
import { isoTimeSchema } from './reading';

/** The longest period that one report may be of, s. */
export const longestReportSeconds = 7 * 86_400;

export const reportQuerySchema = z.strictObject({
  hall: z.string().min(1).optional().describe('one hall; the whole site where left out'),
  from: isoTimeSchema,
  to: isoTimeSchema.describe('half-open; seven days later at most. May be to come: then it tells up to now'),
});

const placeSchema = { unit: z.string().nullable(), hall: z.string().nullable() };

export const reportAlarmSchema = z.object({
  id: z.string(),
  entry: z.string(),
  title: z.string(),
  ...placeSchema,
  priority: prioritySchema,
  state: alarmStateSchema,
  where: z.string().nullable(),
  detail: z.string().nullable(),
  since: isoTimeSchema,
  acknowledgedBy: z.string().nullable(),
  acknowledgedAt: isoTimeSchema.nullable(),
});
export type ReportAlarm = z.infer<typeof reportAlarmSchema>;

export const reportStandingSchema = z.object({
  first: reportAlarmSchema,
  followed: z.array(reportAlarmSchema).describe('what followed from it and stands too'),
});
export type ReportStanding = z.infer<typeof reportStandingSchema>;

export const reportSetAsideSchema = reportAlarmSchema
  .omit({ acknowledgedBy: true, acknowledgedAt: true, detail: true })
  .extend({
    mode: z.enum(['shelved', 'suppressedByDesign', 'outOfService']),
    active: z.boolean().describe('its condition held'),
    until: isoTimeSchema.nullable().describe('when it ends, or is planned to'),
    by: z.string().nullable(),
    reason: z.string(),
    interimMeasures: z.string().nullable(),
  });
export type ReportSetAside = z.infer<typeof reportSetAsideSchema>;

export const reportPermitSchema = z.object({
  id: z.string(),
  unit: z.string(),
  branch: z.string().nullable(),
  openedBy: z.string(),
  openedAt: isoTimeSchema,
  until: isoTimeSchema,
  overdue: z.boolean().describe('its time was over at the end of the period'),
  expectedInLeak: z.number().describe('m3/s of free air (20 °C, 101.325 kPa)'),
  comment: z.string(),
});
export type ReportPermit = z.infer<typeof reportPermitSchema>;

/** How one unit stood lined up at the end of the period, as far as its points tell. */
export const lineUpSchema = z.object({
  unit: z.string(),
  offNormal: z.array(z.string()).describe('what stood other than it usually does, each in words'),
  unknown: z.array(z.string()).describe('what has a point, and no good value in the last minute'),
  notMeasured: z.array(z.string()).describe('what no point tells'),
  asUsual: z.number().int().describe('how many were looked at and stood as usual'),
});
export type LineUp = z.infer<typeof lineUpSchema>;

/** The smallest of something that must not become small. */
export const smallestSchema = z.object({
  unit: z.string(),
  point: z.string(),
  value: z.number(),
  unit_of_measure: z.string(),
  at: isoTimeSchema.describe('begin of the bucket in which it was'),
  bucketSeconds: z.number(),
  where: z.string().nullable().describe('the wetted place that it was at; null: not known, or it has none'),
  expandedUncertainty: z.number().nullable().describe('for 95.45 % (k = 2), worked out anew; null: not known'),
  share: z.number().describe('of the period that has values, 0 to 1'),
});
export type Smallest = z.infer<typeof smallestSchema>;

export const topUpSchema = z.object({
  loop: z.string(),
  name: z.string(),
  units: z.array(z.string()),
  volume: z.number().nullable().describe('m3 that the counters of the loop went on by; null: not known'),
  expandedUncertainty: z.number().nullable().describe('k = 2, from the accuracy that the site file states; null: none'),
  from: isoTimeSchema.nullable().describe('first reading within the period'),
  to: isoTimeSchema.nullable().describe('end of the bucket of the last reading'),
  notes: z.array(z.string()).describe('what is not in the sum'),
});
export type TopUp = z.infer<typeof topUpSchema>;

/** The newest sample of one parameter of the water that people typed, as it was on record at the end of the period. */
export const waterByHandSchema = z.object({
  unit: z.string(),
  point: z.string(),
  title: z.string(),
  value: z.number(),
  unit_of_measure: z.string(),
  takenAt: isoTimeSchema.describe('when the sample was drawn'),
  ageSeconds: z.number().describe('at the end of the period'),
  by: z.string(),
  method: handMethodSchema.nullable().describe('null: not said'),
  note: z.string(),
});
export type WaterByHand = z.infer<typeof waterByHandSchema>;

/** One figure of the shift log. */
export const logFigureSchema = z.object({
  unit: z.string().nullable().describe('null: of the hall'),
  hall: z.string(),
  point: z.string(),
  unit_of_measure: z.string(),
  least: z.number().nullable(),
  mean: z.number().nullable(),
  most: z.number().nullable(),
  last: z.number().nullable().describe('mean of the last bucket that has values'),
  lastAt: isoTimeSchema.nullable(),
  share: z.number().describe('of the period that has values, 0 to 1'),
});
export type LogFigure = z.infer<typeof logFigureSchema>;

export const changeKinds = [
  'setting',
  'site',
  'permit',
  'setAside',
  'hand',
  'people',
  'lineUp',
  'demo',
  'program',
] as const;
export const reportChangeSchema = z.object({
  sequence: z.number().int().describe('row of the journal'),
  at: isoTimeSchema,
  kind: z.enum(changeKinds),
  ...placeSchema,
  what: z.string(),
  point: z.string().nullable().describe('of a value by hand: the point that it is a value of'),
  value: z.number().nullable(),
  unit_of_measure: z.string().nullable(),
  by: z.string().nullable().describe('null: the program, or the plant'),
});
export type ReportChange = z.infer<typeof reportChangeSchema>;

export const reportTestSchema = z.object({
  sequence: z.number().int(),
  at: isoTimeSchema,
  unit: z.string().nullable(),
  what: z.string(),
  by: z.string().nullable(),
});
export type ReportTest = z.infer<typeof reportTestSchema>;

const gapSchema = z.object({ from: isoTimeSchema, to: isoTimeSchema });

/** `GET /api/report`: what one shift hands to the next, and the figures of its period. */
export const reportSchema = z.object({
  site: z.string().describe('name of the site'),
  hall: z.string().nullable(),
  timeZone: z.string(),
  from: isoTimeSchema,
  to: isoTimeSchema,
  until: isoTimeSchema.describe('what is told of the end is of then: the end of the period, or now'),
  madeAt: isoTimeSchema,
  madeBy: z.string().nullable().describe('who asked; null: nobody is signed in'),
  incomplete: z.array(z.string()).describe('what is missing from the report, in sentences'),
  handovers: z.array(handoverSchema),
  standing: z.array(reportStandingSchema).nullable().describe('by first-out; null: can not be told any more'),
  setAside: z.array(reportSetAsideSchema).nullable(),
  alerts: z
    .array(
      reportAlarmSchema.pick({
        id: true,
        entry: true,
        title: true,
        unit: true,
        hall: true,
        where: true,
        detail: true,
        since: true,
      }),
    )
    .nullable(),
  permits: z.array(reportPermitSchema).nullable(),
  lineUp: z.array(lineUpSchema),
  smallestMargin: smallestSchema.nullable().describe('vacuum margin, worst of running and stopped'),
  smallestReserve: smallestSchema.nullable().describe('vacuum reserve, free air'),
  topUp: z.array(topUpSchema),
  waterByHand: z.array(waterByHandSchema).describe('of entries of the last 400 days'),
  log: z.array(logFigureSchema),
  changes: z.array(reportChangeSchema),
  notes: z.array(noteSchema).describe('in force; corrected and withdrawn ones are in the journal'),
  tests: z.array(reportTestSchema).describe('guided tests that began or ended'),
  floods: z.array(floodSchema),
  gaps: z.array(gapSchema).nullable().describe('times in which nothing was recorded; null: not known'),
  energy: energyReportSchema.nullable(),
  performance: alarmPerformanceSchema.nullable(),
});
export type Report = z.infer<typeof reportSchema>;
