import { z } from 'zod';
import { isoTimeSchema } from './reading';
import { operatorSchema } from './people';

/** open: until its end time; overdue: past it and not closed. Closed permits stand in the journal only. */
export const permitStateSchema = z.enum(['open', 'overdue', 'closed']);
export type PermitState = z.infer<typeof permitStateSchema>;

/** A planned opening of one branch: who, until when, and how much air is expected to come in meanwhile. */
export const permitSchema = z.object({
  id: z.string(),
  unit: z.string(),
  branch: z.string().nullable().describe('null: the whole loop is vented or opened'),
  state: permitStateSchema,
  openedBy: z.string(),
  openedAt: isoTimeSchema,
  until: isoTimeSchema,
  expectedInLeak: z.number().describe('m3/s of free air (20 °C, 101.325 kPa)'),
  comment: z.string(),
  /** What must be back at its baseline before the permit closes by itself. */
  waitsFor: z.array(z.enum(['branchFlow', 'gasLoad', 'level', 'isolation'])),
  closedBy: z.string().nullable().describe('null: closed by the program, as all was back at baseline'),
  closedAt: isoTimeSchema.nullable(),
});
export type Permit = z.infer<typeof permitSchema>;

export const permitListSchema = z.object({ time: isoTimeSchema, permits: z.array(permitSchema) });
export type PermitList = z.infer<typeof permitListSchema>;

export const openPermitRequestSchema = z.strictObject({
  unit: z.string().min(1),
  branch: z.string().min(1).nullable(),
  until: isoTimeSchema,
  expectedInLeak: z.number().min(0).max(1).describe('m3/s of free air'),
  operator: operatorSchema,
  comment: z.string().trim().max(1000).default(''),
});
export type OpenPermitRequest = z.infer<typeof openPermitRequestSchema>;

export const closePermitRequestSchema = z.strictObject({
  operator: operatorSchema,
  comment: z.string().trim().max(1000).default(''),
});
export type ClosePermitRequest = z.infer<typeof closePermitRequestSchema>;

/** Codes with which a permit is refused. */
export const permitFaults = [
  'PERMIT_UNKNOWN',
  'PERMIT_UNIT_UNKNOWN',
  'PERMIT_BRANCH_UNKNOWN',
  'PERMIT_OPEN_ALREADY',
  'PERMIT_TIME',
] as const;
export type PermitFault = (typeof permitFaults)[number];
