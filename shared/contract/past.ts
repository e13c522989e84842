import { z } from 'zod';
import { prioritySchema } from './alarm';
import type { HallPicture, LoopPicture } from './live-feed';
import { hallPictureSchema, loopPictureSchema } from './picture';
import { isoTimeSchema } from './reading';

/** The longest period whose marks are asked for at once, s. */
export const longestMarksSeconds = 86_400;
/** So many marks are given at most; of more the most urgent. */
export const mostMarks = 400;

export const pastQuerySchema = z.strictObject({ at: isoTimeSchema.describe('any time within the second asked for') });

const spanSchema = z.object({
  from: isoTimeSchema.nullable().describe('null: nothing recorded within a day before'),
  to: isoTimeSchema.nullable().describe('null: nothing recorded since, within a day after'),
});

const everyMoment = {
  at: isoTimeSchema.describe('the second that is shown, or the minute, its begin'),
  resolution: z
    .enum(['second', 'minute'])
    .describe('minute: only minutes are kept of then; values are means of the minute that begins at `at`'),
  now: isoTimeSchema.describe('the time in force when it was asked for'),
  silent: spanSchema
    .nullable()
    .describe('where nothing was recorded of it then: from when to when nothing was; null: something was'),
  notes: z.array(z.string()).describe('what can not be shown of that moment, in sentences'),
};

/** A hall as it stood at a past second: recorded values and the journal, in the form of a live frame; the hour before it apart. */
export const pastHallSchema = z.object({ ...everyMoment, frame: hallPictureSchema });
export type PastHall = Omit<z.infer<typeof pastHallSchema>, 'frame'> & { readonly frame: HallPicture };

export const pastUnitSchema = z.object({ ...everyMoment, frame: loopPictureSchema });
export type PastUnit = Omit<z.infer<typeof pastUnitSchema>, 'frame'> & { readonly frame: LoopPicture };

export const pastMarksQuerySchema = z.strictObject({
  hall: z.string().min(1).optional(),
  unit: z.string().min(1).optional(),
  from: isoTimeSchema,
  to: isoTimeSchema.describe('at most a day later'),
});

/** raised: an alarm was told; gone: its condition ended; programStarted: Ebbline began to watch, after an end or a loss of power. */
export const markKinds = [
  'raised',
  'gone',
  'floodBegan',
  'floodEnded',
  'permitOpened',
  'permitClosed',
  'programStarted',
  'programEnded',
] as const;
export const markKindSchema = z.enum(markKinds);
export type MarkKind = z.infer<typeof markKindSchema>;

export const pastMarkSchema = z.object({
  time: isoTimeSchema,
  kind: markKindSchema,
  alarm: z.string().nullable(),
  unit: z.string().nullable(),
  title: z.string(),
  where: z.string().nullable(),
  priority: prioritySchema.nullable(),
  firstOut: z.boolean().describe('other alarms of the period followed from it'),
  foldedUnder: z.string().nullable(),
});
export type PastMark = z.infer<typeof pastMarkSchema>;

/** What happened in a period, for a scale of time: alarms, floods, permits, and where nothing was recorded. */
export const pastMarksSchema = z.object({
  from: isoTimeSchema,
  to: isoTimeSchema,
  now: isoTimeSchema,
  marks: z.array(pastMarkSchema).describe('the oldest first'),
  more: z.boolean().describe('there are more than are given: the most urgent are'),
  gaps: z.array(z.object({ from: isoTimeSchema, to: isoTimeSchema })).describe('nothing was recorded in these'),
});
export type PastMarks = z.infer<typeof pastMarksSchema>;
