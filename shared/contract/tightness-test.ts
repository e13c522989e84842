import { z } from 'zod';
import { isoTimeSchema } from './reading';
import { operatorSchema } from './people';

/** How far a test is. */
export const tightnessStateSchema = z.enum(['running', 'ended']);
export type TightnessState = z.infer<typeof tightnessStateSchema>;

/** passes, fails: the whole interval of the result lies on one side of the limit; notDecided: it holds the limit, or the rise was not steady. */
export const tightnessVerdictSchema = z.enum(['passes', 'fails', 'notDecided']);
export type TightnessVerdict = z.infer<typeof tightnessVerdictSchema>;

/** Why a test ended. The last five end it without a verdict. */
export const tightnessEnds = [
  'completed',
  'endedByPerson',
  'sourceStarted',
  'flowStarted',
  'levelJumped',
  'inputBad',
  'configuration',
  'interrupted',
] as const;
export const tightnessEndSchema = z.enum(tightnessEnds);
export type TightnessEnd = z.infer<typeof tightnessEndSchema>;

/** falling: the rate falls, as where water or pockets give off gas; growing: it grows. Both say that the mean is no leak rate. */
export const tightnessSteadinessSchema = z.enum(['tooEarly', 'steady', 'falling', 'growing']);
export type TightnessSteadiness = z.infer<typeof tightnessSteadinessSchema>;

const freeAir = 'm3/s of free air (20 °C, 101.325 kPa)';

/** Slope of the gas by least squares, with its uncertainty (GUM): what comes in. */
export const tightnessResultSchema = z.object({
  throughput: z.number().describe('Pa m3/s, at the temperature of the gas'),
  freeAir: z.number().describe(freeAir),
  standardUncertainty: z.number().describe(freeAir),
  degreesOfFreedom: z.number().int().nullable().describe('effective (Welch–Satterthwaite), rounded down; null: many'),
  coverageFactor: z.number().describe('for 95.45 %'),
  expandedUncertainty: z.number().describe(freeAir),
  pressureRise: z.number().describe('Pa, of the dry gas by the same line, from the first second to the last'),
  gasVolume: z.number().describe('m3, mean'),
  gasTemperature: z.number().describe('Cel, mean'),
  blocks: z.number().int().describe('means of half a minute that the line goes through'),
  budget: z.array(
    z.object({
      from: z.string(),
      contribution: z.number().describe(`standard uncertainty that it brings, ${freeAir}`),
    }),
  ),
});
export type TightnessResult = z.infer<typeof tightnessResultSchema>;

/** A guided pressure-rise test of one unit; complete enough to be printed as its record. */
export const tightnessTestSchema = z.object({
  id: z.string(),
  unit: z.string(),
  state: tightnessStateSchema,
  startedBy: z.string(),
  station: z.string().describe('from where it was started'),
  startedAt: isoTimeSchema,
  plannedMinutes: z.number(),
  acceptanceLimit: z.number().describe(freeAir),
  dry: z.boolean().describe('no water in the loop: all of its volume is gas, and no vapour is subtracted'),
  sourceIsolated: z.boolean().describe('a person said that the valve to the vacuum source is shut'),
  gasVolumeStated: z.number().nullable().describe('m3, said by the person; null: by the site file and the level'),
  comment: z.string(),
  elapsed: z.number().describe('seconds'),
  samples: z.number().int().describe('seconds that were taken'),
  begin: z.object({
    pressure: z.number().describe('Pa absolute'),
    temperature: z.number().describe('Cel'),
    level: z.number().nullable().describe('m; null where the gas volume does not follow a level'),
    gasVolume: z.number().describe('m3'),
  }),
  result: tightnessResultSchema.nullable().describe('null until there are enough samples'),
  steadiness: tightnessSteadinessSchema,
  verdict: tightnessVerdictSchema.nullable().describe('null while it runs, and of a test that was broken off'),
  endedFor: tightnessEndSchema.nullable(),
  endedBy: z.string().nullable().describe('null: by the program'),
  endedAt: isoTimeSchema.nullable(),
  summary: z.string().describe('the result in words, with its units'),
  cautions: z.array(z.string()).describe('what may hurt someone; read before the start'),
});
export type TightnessTest = z.infer<typeof tightnessTestSchema>;

/** Whether a test could start now, and what to mind; the same cautions as in every record. */
export const tightnessListSchema = z.object({
  unit: z.string(),
  time: isoTimeSchema,
  refusals: z
    .array(z.object({ code: z.string(), message: z.string() }))
    .describe('why a test can not be started now; empty: it can'),
  cautions: z.array(z.string()),
  tests: z.array(tightnessTestSchema).describe('newest first, the running one on top'),
});
export type TightnessList = z.infer<typeof tightnessListSchema>;

export const startTightnessRequestSchema = z.strictObject({
  plannedMinutes: z.number().min(5).max(1440).default(30),
  acceptanceLimit: z.number().positive().max(0.1).describe(freeAir),
  dry: z.boolean().default(false),
  sourceIsolated: z.boolean().default(false).describe('the valve to the vacuum source is shut: the source may run'),
  gasVolume: z.number().positive().max(1000).nullable().default(null).describe('m3; null: by the site file'),
  operator: operatorSchema,
  comment: z.string().trim().max(1000).default(''),
});
export type StartTightnessRequest = z.infer<typeof startTightnessRequestSchema>;

export const endTightnessRequestSchema = z.strictObject({
  operator: operatorSchema,
  comment: z.string().trim().max(1000).default(''),
});
export type EndTightnessRequest = z.infer<typeof endTightnessRequestSchema>;

/** Codes with which a test is refused; each message says what is in the way. */
export const tightnessFaults = [
  'TIGHTNESS_UNKNOWN',
  'TIGHTNESS_RUNNING',
  'TIGHTNESS_NO_PRESSURE',
  'TIGHTNESS_NO_VOLUME',
  'TIGHTNESS_NO_ACCURACY',
  'TIGHTNESS_INPUT_BAD',
  'TIGHTNESS_SOURCE_RUNS',
  'TIGHTNESS_BLEED_OPEN',
  'TIGHTNESS_FLOW',
  'TIGHTNESS_LEVEL_MOVES',
  'TIGHTNESS_NO_VACUUM',
] as const;
export type TightnessFault = (typeof tightnessFaults)[number];
