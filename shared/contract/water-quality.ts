import { z } from 'zod';
import { handEntrySchema, molybdateFormSchema } from './hand-entry';
import { isoTimeSchema, readingSchema } from './reading';
import { waterParameterIds } from './water-parameters';

/** Where a value stands in its band; `unknown`: there is no usable value; `noBand`: the site states none. */
export const bandWords = ['lowLow', 'low', 'inBand', 'high', 'highHigh', 'unknown', 'noBand'] as const;
export const bandWordSchema = z.enum(bandWords);
export type BandWord = (typeof bandWords)[number];

export const waterBandSchema = z.object({
  lowLow: z.number().nullable(),
  low: z.number().nullable(),
  high: z.number().nullable(),
  highHigh: z.number().nullable(),
  basis: z.string().describe('what the band rests on, such as `from memory`, or that the site states it'),
});
export type WaterBand = z.infer<typeof waterBandSchema>;

/** One parameter of a unit's water: the value in force, its band, and when a person is to look again. */
export const waterParameterStateSchema = z.object({
  parameter: z.enum(waterParameterIds),
  title: z.string(),
  unit_of_measure: z.string().describe('UCUM code of value and band'),
  shownAs: molybdateFormSchema
    .nullable()
    .describe('molybdate: as what `value` and `band` are counted here, by the choice of the site'),
  referenceTemperature: z.number().nullable().describe('°C that the value is brought to; null: as it is'),
  origin: z
    .enum(['sensor', 'hand', 'none'])
    .describe('the sensor wins while it is not bad; else the newest entry by hand'),
  value: z.number().nullable(),
  reading: readingSchema.nullable().describe('the point behind the value, with its age, quality and reasons'),
  band: waterBandSchema,
  word: bandWordSchema,
  sensor: z.string().nullable().describe('point of the sensor; null where the unit has none'),
  lastCalibration: z.string().nullable().describe('of the sensor, a date as the site file says it'),
  byHand: z.boolean().describe('entries by hand are taken'),
  dueEverySeconds: z.number().nullable().describe('null: no interval stated'),
  dueAt: isoTimeSchema
    .nullable()
    .describe('the newest sample by hand + interval; the time since which Ebbline has waited where there is none yet'),
  overdue: z.boolean(),
  lastEntry: handEntrySchema.nullable().describe('the newest in force; null: no entry yet'),
});
export type WaterParameterState = z.infer<typeof waterParameterStateSchema>;

/** `GET /api/units/{unit}/water`: every parameter that the unit measures or that the site wants sampled, in a fixed order. */
export const waterQualitySchema = z.object({
  unit: z.string(),
  time: isoTimeSchema,
  parameters: z.array(waterParameterStateSchema),
});
export type WaterQuality = z.infer<typeof waterQualitySchema>;
