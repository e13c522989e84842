import { z } from 'zod';
import { operatorSchema } from './people';
import { isoTimeSchema } from './reading';

const wordSchema = z.string().trim().max(2000);

/** One shift handed to the next: one person records handing over, another taking over; both stand in the journal. */
export const handoverSchema = z.object({
  id: z.string(),
  hall: z.string().nullable().describe('null: the whole site'),
  from: isoTimeSchema.describe('begin of the shift that is handed over'),
  to: isoTimeSchema,
  by: z.string(),
  station: z.string(),
  at: isoTimeSchema,
  takerNamed: z.string().describe('who is to take over, as typed'),
  text: z.string(),
  taken: z
    .object({ by: z.string(), station: z.string(), at: isoTimeSchema, text: z.string() })
    .nullable()
    .describe('who took over, signed in; null: nobody yet'),
});
export type Handover = z.infer<typeof handoverSchema>;

/** `POST /api/handovers` */
export const handOverRequestSchema = z.strictObject({
  hall: z.string().min(1).max(200).nullable().default(null),
  from: isoTimeSchema,
  to: isoTimeSchema,
  takerNamed: z.string().trim().min(1).max(80),
  text: wordSchema.default(''),
  operator: operatorSchema,
});
export type HandOverRequest = z.infer<typeof handOverRequestSchema>;

/** `POST /api/handovers/{id}/take` */
export const takeOverRequestSchema = z.strictObject({ text: wordSchema.default(''), operator: operatorSchema });
export type TakeOverRequest = z.infer<typeof takeOverRequestSchema>;

/** Codes with which a handover is refused. */
export const handoverFaults = [
  'HANDOVER_UNKNOWN',
  'HANDOVER_TIME',
  'HANDOVER_TAKEN_ALREADY',
  'HANDOVER_SAME_PERSON',
] as const;
export type HandoverFault = (typeof handoverFaults)[number];
