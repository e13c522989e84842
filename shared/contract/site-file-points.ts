import { z } from 'zod';
import { molybdateFormSchema } from './hand-entry';
import { quantity } from './site-file-quantity';

/** Ids of halls, units, branches and the like: they stand in point ids, addresses and topics. */
export const idSchema = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9_-]{0,63}$/, 'expected letters, digits, - or _, at most 64, without dots or blanks');

const word = z.union([z.string(), z.number(), z.boolean()]);

export const topicSchema = z
  .string()
  .min(1)
  .max(500)
  .describe(
    'MQTT topic without wildcards. `{site}`, `{hall}`, `{unit}`, and under a `branch.*`, `server.*`, `plate.*` or `tank.*` key `{branch}`, `{server}`, `{plate}` and `{tank}`, are filled in.',
  );

export const pathSchema = z
  .union([z.string().min(1), z.array(z.string().min(1)).min(1)])
  .describe(
    'Where it stands in the JSON object: keys joined by dots (`temperatures.supply`), or a list of keys where a key itself has a dot (`[supply.temperature]`). The same `{…}` as in a topic are filled in.',
  );

export const timeSchema = z
  .strictObject({
    path: pathSchema,
    form: z
      .enum(['iso', 'epochSeconds', 'epochMilliseconds'])
      .describe(
        'iso: RFC 3339 text with `Z` or an offset. epochSeconds (may have decimals) or epochMilliseconds since 1970 UTC.',
      ),
  })
  .describe('Where the source time stands in the payload. Without it a sample has the time of its arrival.');

export const senderQualitySchema = z
  .strictObject({
    path: pathSchema,
    good: z.array(word).min(1).describe('The values that mean good; every other one marks the sample bad.'),
  })
  .describe("Where the sender's own quality stands.");

export const pointSchema = z
  .strictObject({
    topic: topicSchema.optional(),
    path: pathSchema.optional(),
    time: timeSchema.optional(),
    quality: senderQualitySchema.optional(),
    unit: z
      .string()
      .optional()
      .describe(
        'Unit of measure of the number in the payload, such as `°C`, `kPa`, `L/min`, `%`. Needed for everything but yes/no, mode and pH.',
      ),
    reference: z
      .enum(['absolute', 'gauge', 'vacuum'])
      .optional()
      .describe(
        'For pressures (not pressure drops) and there mandatory: absolute counts from vacuum; gauge from ambient, below it negative; vacuum from ambient, below it positive.',
      ),
    span: z
      .string()
      .optional()
      .describe(
        'For a level in `%`, or a speed that is not told in `%`: what 0 % and 100 % mean, such as `0.10 to 0.80 m` (level) or `0 to 50 Hz` (speed; then the payload is in Hz).',
      ),
    density: quantity(
      'density',
      '992 kg/m3',
      'For a flow told in `kg/s` or `kg/h`: density at the meter, by which it becomes a volume flow.',
    ).optional(),
    accuracy: z
      .union([z.string(), z.array(z.string()).min(1)])
      .optional()
      .describe(
        'Half-width of what the sensor may be off: `±0.4 kPa`, `1 % of reading`, `0.5 % of span` (of `range`), `Pt100 AA|A|B|C` (IEC 60751), `EN 1434 class 2 of 20 m3/h` (flow sensor of a heat meter, by its permanent flow). Several in a list add up. A certificate with its coverage factor counts as normal: `U = 0.1 K (k = 2)`.',
      ),
    range: z
      .string()
      .optional()
      .describe(
        "What the sensor can tell, in the point's own unit of measure and reference, such as `0 to 160 kPa` or `-100 to 60 kPa`. A value outside is bad.",
      ),
    period: quantity(
      'duration',
      '1 s',
      'Expected time between samples; silent for three of them (at least 5 s) is stale. Default 1 s.',
    ).optional(),
    jumpPerSecond: z
      .string()
      .optional()
      .describe('Largest believable change in a second, such as `20 kPa`; a faster one marks the sample uncertain.'),
    stuckAfter: quantity(
      'duration',
      '10 min',
      'A value that has not changed at all for so long is marked uncertain. Leave out where standing still is normal.',
    ).optional(),
    words: z
      .record(z.string(), z.string())
      .optional()
      .describe(
        'For yes/no and mode: what the sender says → what it means, such as `{ RUN: running, STOP: off }` or `{ on: yes, off: no }`. Without it yes/no takes true, false, 1, 0, and mode takes the mode names.',
      ),
    as: molybdateFormSchema
      .optional()
      .describe('As what `water.molybdate` is told: Mo or MoO4. Mandatory there: 40 mg/L as Mo is 66.7 mg/L as MoO₄.'),
    hose: z
      .enum(['supply', 'return', 'facilitySupply', 'facilityReturn'])
      .optional()
      .describe('Which hose it sits on. Mandatory for `loop.flow`: a cut reads differently on either side.'),
  })
  .describe(
    'One measured point. It is found by `topic` alone (bare number), by `topic` and `path` (JSON), or by `path` in the `topic` of its unit or hall.',
  );
export type PointInFile = z.infer<typeof pointSchema>;

export const pointsSchema = z
  .record(z.string(), pointSchema.nullable())
  .describe(
    'Measured points by point id, such as `supply.temperature`. `branch.*.flow` stands for that point of every branch; so do `server.*`, `plate.*` and `tank.*`. `~` takes away what a template gave.',
  );
