import { z } from 'zod';
import { operatorSchema } from './people';
import { isoTimeSchema } from './reading';

/** So many notes at most are given at once, the newest of them. */
export const mostNotes = 500;

const noteTextSchema = z.string().trim().min(1).max(2000).describe('plain text; lines are kept');
const whySchema = z.string().trim().min(1).max(1000);
const scope = {
  hall: z.string().nullable().describe('null: of no one hall'),
  unit: z.string().nullable(),
  alarm: z.string().nullable().describe('id of an alarm that it speaks of'),
};

/** What a person wrote down of the plant. Never changed: a correction or a withdrawal is an entry of its own. */
export const noteSchema = z.object({
  id: z.string(),
  text: noteTextSchema,
  by: z.string(),
  station: z.string(),
  writtenAt: isoTimeSchema,
  about: isoTimeSchema.describe('the time that it speaks of'),
  ...scope,
  corrects: z.string().nullable().describe('the note that this one stands in place of'),
  why: z.string().nullable().describe('why that one was corrected'),
  correctedBy: z.string().nullable().describe('the note that stands in its place; null: none does'),
  withdrawn: z
    .object({ by: z.string(), at: isoTimeSchema, reason: z.string() })
    .nullable()
    .describe('who took it back and why; null: it stands'),
});
export type Note = z.infer<typeof noteSchema>;

export const notesQuerySchema = z.strictObject({
  from: isoTimeSchema.describe('notes about then or later'),
  to: isoTimeSchema.describe('half-open'),
  hall: z
    .string()
    .min(1)
    .optional()
    .describe('what concerns it: notes of the hall, of its units, and of the whole site'),
  unit: z
    .string()
    .min(1)
    .optional()
    .describe('what concerns it: notes of the unit, of its whole hall, and of the whole site'),
});

/** `GET /api/notes`, the oldest first; corrected and withdrawn ones are among them. */
export const noteListSchema = z.object({
  time: isoTimeSchema,
  notes: z.array(noteSchema),
  more: z.boolean().describe(`there are more than the newest ${mostNotes}, which are given`),
});
export type NoteList = z.infer<typeof noteListSchema>;

/** `POST /api/notes` */
export const noteRequestSchema = z.strictObject({
  text: noteTextSchema,
  about: isoTimeSchema.nullable().default(null).describe('the time that it speaks of; null: now'),
  hall: z.string().min(1).max(200).nullable().default(null).describe('null: that of the unit, or of no one hall'),
  unit: z.string().min(1).max(200).nullable().default(null),
  alarm: z.string().min(1).max(300).nullable().default(null),
  operator: operatorSchema,
});
export type NoteRequest = z.infer<typeof noteRequestSchema>;

/** `POST /api/notes/{id}/correct`: another text takes its place; time and scope stay, and so do both on record. */
export const noteCorrectionRequestSchema = z.strictObject({
  text: noteTextSchema,
  reason: whySchema.describe('why it is corrected'),
  operator: operatorSchema,
});
export type NoteCorrectionRequest = z.infer<typeof noteCorrectionRequestSchema>;

/** `POST /api/notes/{id}/withdraw`: it stays on record, marked as taken back. */
export const noteWithdrawalRequestSchema = z.strictObject({
  reason: whySchema.describe('why it is withdrawn'),
  operator: operatorSchema,
});
export type NoteWithdrawalRequest = z.infer<typeof noteWithdrawalRequestSchema>;

/** Codes with which a note is refused. */
export const noteFaults = ['NOTE_UNKNOWN', 'NOTE_TIME', 'NOTE_CORRECTED_ALREADY', 'NOTE_WITHDRAWN_ALREADY'] as const;
export type NoteFault = (typeof noteFaults)[number];
