import { z } from 'zod';
import { isoTimeSchema } from './reading';
import { waterParameterIds } from './water-parameters';
import { operatorSchema } from './people';

/** As what a molybdate concentration is counted: 40 mg/L as Mo is 66.7 mg/L as MoO₄. */
export const molybdateForms = ['Mo', 'MoO4'] as const;
export const molybdateFormSchema = z.enum(molybdateForms);
export type MolybdateForm = (typeof molybdateForms)[number];

/** How a value was come by. */
export const handMethods = ['laboratory', 'instrument', 'strip', 'titration'] as const;
export const handMethodSchema = z.enum(handMethods);
export type HandMethod = (typeof handMethods)[number];

const parameterSchema = z.enum(waterParameterIds);

/** A value that a person typed: of the laboratory, a hand instrument or a test strip. Never changed: a correction is another entry. */
export const handEntrySchema = z.object({
  id: z.string(),
  unit: z.string(),
  parameter: parameterSchema,
  point: z.string().describe('the point that it is the sample of: `water.<parameter>.hand`'),
  value: z
    .number()
    .nullable()
    .describe(
      'in `unit_of_measure`; conductivity at 25 °C, molybdate as Mo; null: this one withdraws the entry that `corrects` names',
    ),
  unit_of_measure: z.string().describe('UCUM code'),
  typed: z
    .object({
      value: z.number(),
      unit: z.string().describe('as typed, such as `mg/L`'),
      as: molybdateFormSchema.nullable(),
      sampleTemperature: z.number().nullable().describe('°C; conductivity as it read at that temperature'),
      method: handMethodSchema.nullable().describe('how it was measured; null: not said'),
    })
    .nullable()
    .describe('as the person typed it; null where `value` is'),
  takenAt: isoTimeSchema.describe('when the sample was drawn'),
  enteredAt: isoTimeSchema,
  by: z.string(),
  station: z.string(),
  note: z.string(),
  corrects: z.string().nullable().describe('the entry that this one stands in place of'),
  correctedBy: z.string().nullable().describe('the entry that stands in its place; null: in force'),
});
export type HandEntry = z.infer<typeof handEntrySchema>;

/** `GET /api/units/{unit}/hand-entries`: the newest 50 of each parameter, newest sample first, corrected ones among them. */
export const handEntryListSchema = z.object({
  unit: z.string(),
  time: isoTimeSchema,
  entries: z.array(handEntrySchema),
});
export type HandEntryList = z.infer<typeof handEntryListSchema>;

const typedKeys = {
  unit: z.string().trim().min(1).max(20).describe('unit of measure, such as `mg/L` or `µS/cm`; `1` for pH'),
  as: molybdateFormSchema.nullable().default(null).describe('needed for molybdate, and only there'),
  sampleTemperature: z
    .number()
    .min(0)
    .max(100)
    .nullable()
    .default(null)
    .describe('°C, conductivity only: it is brought to 25 °C. Null: the instrument has done so'),
  takenAt: isoTimeSchema,
  method: handMethodSchema
    .nullable()
    .default(null)
    .describe('laboratory, hand instrument, test strip, or drops counted; null: not said'),
};

/** `POST /api/units/{unit}/hand-entries` */
export const handEntryRequestSchema = z.strictObject({
  parameter: z.string().min(1).max(80),
  value: z.number(),
  ...typedKeys,
  operator: operatorSchema,
  note: z.string().trim().max(1000).default(''),
});
export type HandEntryRequest = z.infer<typeof handEntryRequestSchema>;

/** `POST /api/units/{unit}/hand-entries/{entry}/correct`: another entry takes its place; both stay on record. */
export const handCorrectionRequestSchema = z.strictObject({
  value: z.number(),
  ...typedKeys,
  operator: operatorSchema,
  note: z.string().trim().min(1).max(1000).describe('why it is corrected'),
});
export type HandCorrectionRequest = z.infer<typeof handCorrectionRequestSchema>;

/**
 * `POST /api/units/{unit}/hand-entries/{entry}/withdraw`: nothing takes its place, so the sample before it is in force
 * again, with its due date; or none is. It stays on record, beside an entry without a value that says who and why.
 */
export const handWithdrawalRequestSchema = z.strictObject({
  operator: operatorSchema,
  note: z.string().trim().min(1).max(1000).describe('why it is withdrawn'),
});
export type HandWithdrawalRequest = z.infer<typeof handWithdrawalRequestSchema>;

/** Codes with which an entry is refused. */
export const handEntryFaults = [
  'HAND_ENTRY_PARAMETER',
  'HAND_ENTRY_UNIT_OF_MEASURE',
  'HAND_ENTRY_FORM',
  'HAND_ENTRY_TIME',
  'HAND_ENTRY_RANGE',
  'HAND_ENTRY_UNKNOWN',
  'HAND_ENTRY_CORRECTED_ALREADY',
  'HAND_ENTRY_WITHDRAWN_ALREADY',
] as const;
export type HandEntryFault = (typeof handEntryFaults)[number];
