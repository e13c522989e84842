import { z } from 'zod';

/** good: use it; uncertain: shown, marked, used with care; bad: no value is derived from it. */
export const qualitySchema = z.enum(['good', 'uncertain', 'bad']);
export type Quality = z.infer<typeof qualitySchema>;

/** Why a value is not good. Stable codes; `frontend/src/text/words.ts` says them in words. */
export const qualityReasons = [
  'notReceived',
  'stale',
  'ageUnknown',
  'outOfRange',
  'stuck',
  'jump',
  'senderFlag',
  'ambientEstimated',
  'inputBad',
  'inputUncertain',
  'undefined',
  'notApplicable',
  'warming',
  'contradicted',
  'overdue',
  'notSet',
  'notRecorded',
  'uncertainThen',
  'badThen',
] as const;
export const qualityReasonSchema = z.enum(qualityReasons);
export type QualityReason = z.infer<typeof qualityReasonSchema>;

/** The quality each reason alone leads to; a value's quality is the worst of its reasons. */
export const qualityOfReason: Readonly<Record<QualityReason, Quality>> = {
  notReceived: 'bad',
  stale: 'bad',
  ageUnknown: 'bad',
  outOfRange: 'bad',
  stuck: 'uncertain',
  jump: 'uncertain',
  senderFlag: 'bad',
  ambientEstimated: 'uncertain',
  inputBad: 'bad',
  inputUncertain: 'uncertain',
  undefined: 'bad',
  notApplicable: 'bad',
  warming: 'bad',
  contradicted: 'bad',
  overdue: 'uncertain',
  notSet: 'bad',
  notRecorded: 'bad',
  uncertainThen: 'uncertain',
  badThen: 'bad',
};

export const isoTimeSchema = z.iso.datetime().describe('ISO 8601, UTC');

/** One point as a screen or an outside program receives it. */
export const readingSchema = z.object({
  id: z.string().describe('point id'),
  kind: z.enum(['measured', 'derived']),
  value: z.number().nullable().describe('in `unit`; null where there is no value'),
  unit: z.string().describe('UCUM code, SI or Cel'),
  time: isoTimeSchema.nullable().describe('source time of the value; null where none was received'),
  age: z
    .number()
    .nullable()
    .describe('seconds since `time` by the clock in force, at least those since it was accepted; null where unknown'),
  quality: qualitySchema,
  reasons: z.array(qualityReasonSchema),
  expandedUncertainty: z
    .number()
    .nullable()
    .describe(
      'for 95.45 % (k = 2, or Student’s t where it rests on few observations), in `unit`; null where an input states no accuracy',
    ),
  where: z.string().nullable().describe('the wetted point, branch or wall that decides the value'),
});
export type Reading = z.infer<typeof readingSchema>;
