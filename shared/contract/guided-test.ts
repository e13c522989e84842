import { z } from 'zod';
import { guidedCurveSchema } from './guided-curve';
import { guidedQuantitySchema as quantity } from './guided-quantity';
import { operatorSchema } from './people';
import { isoTimeSchema } from './reading';

/** Which tests there are, in the order in which they are listed. The pressure-rise test has routes of its own. */
export const guidedKinds = [
  'zeroCheck',
  'heatBalance',
  'changeOver',
  'pumpChangeOver',
  'loadTest',
  'plateResistance',
  'cutLine',
] as const;
export const guidedKindSchema = z.enum(guidedKinds);
export type GuidedKind = z.infer<typeof guidedKindSchema>;

/** confirm: a person reads, does and says so; measure: the program takes samples; ended: nothing more comes. */
export const guidedStates = ['confirm', 'measure', 'ended'] as const;
export const guidedStateSchema = z.enum(guidedStates);
export type GuidedState = z.infer<typeof guidedStateSchema>;

/** passes, fails: the whole interval lies on one side of the limit; notDecided: it holds the limit. */
export const guidedVerdicts = ['passes', 'fails', 'notDecided'] as const;
export const guidedVerdictSchema = z.enum(guidedVerdicts);
export type GuidedVerdict = z.infer<typeof guidedVerdictSchema>;

/** Why a test ended. All but the first end it without a verdict. */
export const guidedEnds = [
  'completed',
  'cancelled',
  'neverSteady',
  'gateLost',
  'inputBad',
  'alarm',
  'configuration',
  'interrupted',
] as const;
export const guidedEndSchema = z.enum(guidedEnds);
export type GuidedEnd = z.infer<typeof guidedEndSchema>;

/** Codes with which a test, or a step of one, is refused; each message says what is in the way. */
export const guidedFaults = [
  'GUIDED_UNKNOWN',
  'GUIDED_RUNNING',
  'GUIDED_ENDED',
  'GUIDED_STEP',
  'GUIDED_SETTING',
  'GUIDED_ALARM',
  'GUIDED_NO_POINT',
  'GUIDED_NO_ACCURACY',
  'GUIDED_INPUT_BAD',
  'GUIDED_MODE',
  'GUIDED_FLOW',
  'GUIDED_SOURCE_RUNS',
  'GUIDED_STANDBY_RUNS',
  'GUIDED_NOT_VENTED',
  'GUIDED_LOAD',
  'GUIDED_MARGIN',
  'GUIDED_RESERVE',
  'GUIDED_TRAY',
  'GUIDED_PERMIT',
  'GUIDED_SECOND',
] as const;
export type GuidedFault = (typeof guidedFaults)[number];

/** What a person chooses before a test, or reads off an instrument at a step. Numbers are in `unit`. */
export const guidedAskedSchema = z.object({
  key: z.string(),
  title: z.string(),
  kind: z.enum(['number', 'text']),
  unit: z.string().describe('unit of measure of a number, as it is typed; empty for text'),
  least: z.number().nullable(),
  most: z.number().nullable(),
  usual: z.union([z.number(), z.string()]).nullable().describe('null: has to be said'),
  choices: z
    .array(z.object({ value: z.string(), name: z.string() }))
    .optional()
    .describe('of a text: one of these; left out: any words'),
});
export type GuidedAsked = z.infer<typeof guidedAskedSchema>;

const givenSchema = z.record(z.string().max(40), z.union([z.number(), z.string().max(200)]));
export type GuidedGiven = z.infer<typeof givenSchema>;

const refusalSchema = z.object({ code: z.enum(guidedFaults), message: z.string() });
export type GuidedRefusal = z.infer<typeof refusalSchema>;

/** One figure of the result with its interval and what it was held against. */
export const guidedFigureSchema = z.object({
  title: z.string(),
  quantity,
  value: z.number().describe('SI, temperatures in Cel'),
  expandedUncertainty: z.number().describe('for 95.45 %'),
  coverageFactor: z.number(),
  low: z.number().nullable().describe('not below this; null: no such limit'),
  high: z.number().nullable().describe('not above this; null: no such limit'),
  verdict: guidedVerdictSchema.nullable().describe('null: told, not judged'),
  budget: z.array(
    z.object({ from: z.string(), contribution: z.number().describe('standard uncertainty that it brings') }),
  ),
});
export type GuidedFigure = z.infer<typeof guidedFigureSchema>;

export const guidedResultSchema = z.object({
  figures: z.array(guidedFigureSchema),
  curve: guidedCurveSchema.optional().describe('where a test measures one quantity against another'),
  notes: z.array(z.string()).describe('what could not be judged, and why'),
});
export type GuidedResult = z.infer<typeof guidedResultSchema>;

/** What a step measured of one reading: over the steady end of it, and over all of it. */
export const guidedReadingSchema = z.object({
  reading: z.string(),
  title: z.string(),
  quantity,
  mean: z.number().describe('over the window'),
  scatter: z.number().describe('standard uncertainty of the mean by the scatter of its blocks'),
  degreesOfFreedom: z.number().int(),
  least: z.number().describe('of single samples, over the whole step'),
  most: z.number().describe('of single samples, over the whole step'),
});
export type GuidedReading = z.infer<typeof guidedReadingSchema>;

export const guidedStepSchema = z.object({
  id: z.string(),
  kind: z.enum(['confirm', 'measure']),
  title: z.string(),
  text: z.string(),
  cautions: z.array(z.string()),
  asks: z.array(guidedAskedSchema),
  doneAt: isoTimeSchema.nullable(),
  by: z.string().nullable().describe('who confirmed it; null: the program, or nobody yet'),
  given: givenSchema,
  comment: z.string(),
  seconds: z.number().nullable().describe('so long was measured'),
  samples: z.number().int().nullable(),
  readings: z.array(guidedReadingSchema),
});
export type GuidedStep = z.infer<typeof guidedStepSchema>;

/** How one reading stands against the criterion of steadiness. */
export const guidedSteadySchema = z.object({
  reading: z.string(),
  title: z.string(),
  quantity,
  drift: z.number().nullable().describe('slope × window; null: too few blocks'),
  driftUncertainty: z.number().nullable().describe('for 95.45 %'),
  allowed: z.number().describe('the whole interval of the drift has to lie within ± this'),
  steady: z.boolean(),
  seconds: z.array(z.number()).describe('since the step began, of each mean'),
  means: z.array(z.number()),
});
export type GuidedSteady = z.infer<typeof guidedSteadySchema>;

export const guidedLiveSchema = z.object({
  seconds: z.number(),
  samples: z.number().int(),
  window: z.number().describe('seconds over which it has to be steady'),
  least: z.number().describe('seconds that it takes at least'),
  most: z.number().describe('seconds after which it is given up'),
  watched: z.array(guidedSteadySchema),
});
export type GuidedLive = z.infer<typeof guidedLiveSchema>;

/** A guided test; complete enough to be printed as its record. */
export const guidedTestSchema = z.object({
  id: z.string(),
  unit: z.string(),
  kind: guidedKindSchema,
  title: z.string(),
  state: guidedStateSchema,
  startedBy: z.string(),
  station: z.string(),
  startedAt: isoTimeSchema,
  comment: z.string(),
  settings: z.array(z.object({ title: z.string(), value: z.union([z.number(), z.string()]), unit: z.string() })),
  steps: z.array(guidedStepSchema),
  step: z.string().nullable().describe('the one that is now; null: ended'),
  refusals: z.array(refusalSchema).describe('what is in the way of the next step now'),
  criterion: z.string().describe('when it counts as steady, and whose rule that is'),
  instruments: z.array(z.object({ point: z.string(), expandedUncertainty: z.number().nullable(), quantity })),
  live: guidedLiveSchema.nullable().describe('while it measures'),
  result: guidedResultSchema.nullable(),
  verdict: guidedVerdictSchema.nullable(),
  endedFor: guidedEndSchema.nullable(),
  endedBy: z.string().nullable().describe('null: by the program'),
  endedAt: isoTimeSchema.nullable(),
  summary: z.string(),
});
export type GuidedTest = z.infer<typeof guidedTestSchema>;

/** A test that a unit could have, and what is in the way. */
export const guidedOfferSchema = z.object({
  kind: guidedKindSchema,
  title: z.string(),
  about: z.string(),
  criterion: z.string(),
  cautions: z.array(z.string()),
  asks: z.array(guidedAskedSchema),
  steps: z.array(z.object({ id: z.string(), title: z.string(), text: z.string() })),
  refusals: z.array(refusalSchema).describe('empty: it can begin'),
});
export type GuidedOffer = z.infer<typeof guidedOfferSchema>;

export const guidedListSchema = z.object({
  unit: z.string(),
  time: isoTimeSchema,
  offers: z.array(guidedOfferSchema),
  tests: z.array(guidedTestSchema).describe('newest first'),
});
export type GuidedList = z.infer<typeof guidedListSchema>;

/** Every unit with what it could have. */
export const guidedSurveySchema = z.object({
  time: isoTimeSchema,
  units: z.array(
    z.object({
      unit: z.string(),
      open: z.object({ id: z.string(), title: z.string() }).nullable().describe('a test that goes on'),
      offers: z.array(guidedOfferSchema.pick({ kind: true, title: true, refusals: true })),
      rise: z
        .object({
          running: z.string().nullable().describe('id of the one that runs'),
          refusals: z.array(z.object({ code: z.string(), message: z.string() })),
          last: z
            .object({ id: z.string(), endedAt: isoTimeSchema.nullable(), verdict: guidedVerdictSchema.nullable() })
            .nullable(),
        })
        .describe('the pressure-rise test, which has routes of its own'),
      last: z
        .object({
          id: z.string(),
          title: z.string(),
          endedAt: isoTimeSchema.nullable(),
          verdict: guidedVerdictSchema.nullable(),
        })
        .nullable(),
    }),
  ),
});
export type GuidedSurvey = z.infer<typeof guidedSurveySchema>;

const commentSchema = z.string().trim().max(1000).default('');

export const startGuidedRequestSchema = z.strictObject({
  kind: guidedKindSchema,
  settings: givenSchema.default({}).describe('by the keys of `asks`; what is left out is as usual'),
  operator: operatorSchema,
  comment: commentSchema,
});
export type StartGuidedRequest = z.infer<typeof startGuidedRequestSchema>;

export const confirmGuidedRequestSchema = z.strictObject({
  step: z.string().max(60).describe('the step that is confirmed: the one that is now, or it is refused'),
  given: givenSchema.default({}),
  operator: operatorSchema,
  comment: commentSchema,
});
export type ConfirmGuidedRequest = z.infer<typeof confirmGuidedRequestSchema>;

export const cancelGuidedRequestSchema = z.strictObject({ operator: operatorSchema, comment: commentSchema });
export type CancelGuidedRequest = z.infer<typeof cancelGuidedRequestSchema>;
