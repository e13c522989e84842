import { z } from 'zod';
import { prioritySchema } from './alarm';
import { healthReasonCodes } from './health-reasons';
import { isoTimeSchema, readingSchema } from './reading';

export const modes = [
  'off',
  'vented',
  'tightnessTest',
  'filling',
  'purging',
  'starting',
  'running',
  'standby',
  'stopping',
  'draining',
  'service',
  'powerReturn',
] as const;
/** Modes of a loop, in the order in which it is filled, run, drained and served (common practice, no source). Not known counts as running. */
export const modeSchema = z.enum(modes);
export type Mode = z.infer<typeof modeSchema>;

export const brokerStateSchema = z.object({
  state: z.enum(['connected', 'connecting', 'lost']),
  address: z.string().describe('host and port, never a credential'),
  embedded: z.boolean(),
  note: z.string().nullable().describe('such as: port 1883 was taken, 1884 is used'),
});
export type BrokerState = z.infer<typeof brokerStateSchema>;

export const clockStateSchema = z.object({
  kind: z.enum(['wall', 'source']),
  now: isoTimeSchema.nullable().describe('the time in force; null on the source clock before the first sample'),
});
export type ClockState = z.infer<typeof clockStateSchema>;

export const healthSchema = z.object({
  status: z.enum(['ok', 'degraded', 'starting']),
  reasons: z.array(
    z.object({
      code: z.enum(healthReasonCodes).describe('stable; README says what each means'),
      message: z.string().describe('what is known of this very case'),
      action: z.string().describe('what to do'),
    }),
  ),
  clock: clockStateSchema,
  broker: brokerStateSchema,
  lastSampleAge: z.number().nullable().describe('seconds since the newest accepted sample arrived'),
  version: z.string(),
});
export type Health = z.infer<typeof healthSchema>;

/** The process answers, whatever else is wrong with it. */
export const aliveSchema = z.object({ status: z.enum(['alive']) });
export type Alive = z.infer<typeof aliveSchema>;

/** Stores are open, a site is in force, the state of the broker is known, and the plant is judged. */
export const readySchema = z.object({ status: z.enum(['ready']) });
export type Ready = z.infer<typeof readySchema>;

export const siteSchema = z.object({
  id: z.string(),
  name: z.string(),
  timeZone: z.string(),
  altitude: z.number().describe('m'),
  demo: z.boolean(),
  halls: z.array(z.object({ id: z.string(), name: z.string(), units: z.array(z.string()) })),
  loops: z.array(
    z.object({ id: z.string(), name: z.string(), units: z.array(z.string()), unitsNeeded: z.number().int() }),
  ),
  units: z.array(
    z.object({
      id: z.string(),
      hall: z.string(),
      name: z.string(),
      shape: z.enum(['a', 'b', 'c']),
      gateway: z.string(),
      branches: z.array(
        z.object({ id: z.string(), name: z.string(), ratedFlow: z.number().nullable().describe('m3/s') }),
      ),
      plates: z.array(z.object({ id: z.string(), name: z.string(), branch: z.string().nullable() })),
      servers: z.array(z.object({ id: z.string(), name: z.string(), branch: z.string().nullable() })),
      tanks: z.array(z.object({ id: z.string(), name: z.string() })),
      loop: z.string(),
      nodes: z.array(
        z.object({
          id: z.string(),
          name: z.string(),
          main: z.enum(['supply', 'return']),
          elevation: z.number().describe('m'),
        }),
      ),
    }),
  ),
  entryTitles: z.record(z.string(), z.string()).describe('what the entries of the alarm catalogue are called, by id'),
});
export type Site = z.infer<typeof siteSchema>;

export const unitListSchema = z.object({
  units: z.array(
    z.object({
      id: z.string(),
      hall: z.string(),
      name: z.string(),
      mode: modeSchema,
      modeKnown: z.boolean(),
      worstPriority: prioritySchema.nullable(),
      standingAlarms: z.number().int(),
      age: z.number().nullable().describe('seconds since the newest sample of the unit'),
    }),
  ),
});

export type UnitList = z.infer<typeof unitListSchema>;

export const pointListSchema = z.object({
  unit: z.string(),
  time: isoTimeSchema.nullable(),
  mode: modeSchema,
  points: z.array(readingSchema),
});
export type PointList = z.infer<typeof pointListSchema>;

const column = z.array(z.number().nullable());
export const historyColumnsSchema = z.object({
  unit: z.string(),
  point: z.string(),
  unit_of_measure: z.string(),
  bucketMs: z.number().int().describe('ceil((to − from) / buckets), aligned at `from`, half-open'),
  resolution: z.enum(['second', 'minute']),
  start: z.array(isoTimeSchema),
  min: column,
  mean: column,
  max: column,
  count: z.array(z.number().int()),
});
export type HistoryColumns = z.infer<typeof historyColumnsSchema>;

export const historyQuerySchema = z.strictObject({
  unit: z.string().min(1),
  point: z.string().min(1),
  from: isoTimeSchema,
  to: isoTimeSchema,
  buckets: z.coerce.number().int().min(1).max(5000).default(600),
});

export const intakeSchema = z.object({
  messages: z.number().int(),
  samples: z.number().int().describe('samples accepted'),
  late: z.number().int().describe('samples older than the newest of their point: kept in history only'),
  repeated: z.number().int().describe('samples that said again what their point has already: not kept again'),
  retained: z.number().int().describe('messages that the broker had kept for us'),
  topics: z.array(z.object({ topic: z.string(), messages: z.number().int(), refused: z.number().int() })),
  otherTopics: z.object({ messages: z.number().int(), refused: z.number().int() }),
  refusals: z.array(
    z.object({
      code: z.string(),
      count: z.number().int(),
      example: z.object({ topic: z.string(), message: z.string(), payloadStart: z.string(), time: isoTimeSchema }),
    }),
  ),
});
export type Intake = z.infer<typeof intakeSchema>;
