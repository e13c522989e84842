import { z } from 'zod';
import { prioritySchema } from './alarm';
import { maximumTrendPoints } from './live-feed';
import { isoTimeSchema } from './reading';

/** One or more ids with commas between them. */
const idList = z
  .string()
  .min(1)
  .max(2000)
  .refine((text) => text.split(',').every((id) => id !== ''), 'must be ids with a comma between two of them')
  .refine((text) => text.split(',').length <= maximumTrendPoints, `must be ${maximumTrendPoints} ids at most`);

export const alarmSpansQuerySchema = z.strictObject({
  units: idList.describe('ids of units, with commas'),
  from: isoTimeSchema,
  to: isoTimeSchema.describe('half-open'),
});

/** How long one alarm of a unit, or of its hall, stood: from when it was raised until its condition had gone. */
export const alarmSpanSchema = z.object({
  alarm: z.string(),
  unit: z.string().nullable().describe('null: of the hall, of a loop of several units, or of a gateway of several'),
  hall: z.string().nullable(),
  entry: z.string(),
  title: z.string(),
  priority: prioritySchema.describe('the most urgent that it had'),
  from: isoTimeSchema.nullable().describe('when it was raised; null: before what can be told'),
  to: isoTimeSchema.nullable().describe('when its condition had gone; null: it stands'),
  acknowledged: isoTimeSchema.nullable().describe('when a person acknowledged it within the period or later'),
  where: z.string().nullable(),
  foldedUnder: z.string().nullable().describe('id of the first-out alarm that it followed from'),
});
export type AlarmSpan = z.infer<typeof alarmSpanSchema>;

export const alarmSpansSchema = z.object({
  from: isoTimeSchema,
  to: isoTimeSchema,
  searchableFrom: isoTimeSchema
    .nullable()
    .describe('time of the first row of the journal that can still be searched; null: it has none'),
  readTo: isoTimeSchema
    .nullable()
    .describe(
      'where not all rows could be read: the time up to which they were; what stood on from before the period until after this may be missing. Null: all were read',
    ),
  spans: z.array(alarmSpanSchema).describe('by the time at which they were raised'),
});
export type AlarmSpans = z.infer<typeof alarmSpansSchema>;

/** So many moments at most are worked out for one answer. */
export const mostMoments = 60;

export const uncertaintyQuerySchema = z.strictObject({
  unit: z.string().min(1),
  points: idList.describe('ids of points of the unit or its hall, with commas'),
  from: isoTimeSchema,
  to: isoTimeSchema.describe('half-open'),
  moments: z.coerce
    .number()
    .int()
    .min(1)
    .max(mostMoments)
    .default(24)
    .describe('at most so many moments of the period'),
});

/** Expanded uncertainty of past values: not kept, but worked out anew from what was measured around each moment. */
export const pastUncertaintySchema = z.object({
  unit: z.string(),
  moments: z.array(isoTimeSchema),
  pending: z
    .number()
    .int()
    .describe('so many moments were not worked out yet when the time for one answer was over: ask again for them'),
  points: z.array(
    z.object({
      point: z.string(),
      unit_of_measure: z.string(),
      expandedUncertainty: z
        .array(z.number().nullable())
        .describe('of a single value at each moment, for 95.45 % (k = 2); null: it could not be worked out'),
    }),
  ),
  minutesBefore: isoTimeSchema
    .nullable()
    .describe(
      'of before this only minutes are kept, from which it can’t be worked out; null: all of the period is there',
    ),
});
export type PastUncertainty = z.infer<typeof pastUncertaintySchema>;
