import { handOverRequestSchema, handoverSchema, takeOverRequestSchema } from './handover';
import {
  noteCorrectionRequestSchema,
  noteListSchema,
  noteRequestSchema,
  noteSchema,
  notesQuerySchema,
  noteWithdrawalRequestSchema,
} from './notes';
import type { RouteRow } from './route-row';

/** What people write down of the plant, and how one shift hands over to the next. */
export const noteRoutes = [
  {
    method: 'get',
    path: '/api/notes',
    right: 'look',
    reply: noteListSchema,
    query: notesQuerySchema,
    body: null,
    faults: ['HALL_UNKNOWN', 'UNIT_UNKNOWN'],
  },
  {
    method: 'post',
    path: '/api/notes',
    right: 'note',
    reply: noteSchema,
    query: null,
    body: noteRequestSchema,
    faults: ['ACTOR_DIFFERS', 'HALL_UNKNOWN', 'UNIT_UNKNOWN', 'NOTE_TIME', 'JOURNAL_UNAVAILABLE'],
  },
  {
    method: 'post',
    path: '/api/notes/{id}/correct',
    right: 'note',
    reply: noteSchema,
    query: null,
    body: noteCorrectionRequestSchema,
    faults: [
      'ACTOR_DIFFERS',
      'NOTE_UNKNOWN',
      'NOTE_CORRECTED_ALREADY',
      'NOTE_WITHDRAWN_ALREADY',
      'JOURNAL_UNAVAILABLE',
    ],
  },
  {
    method: 'post',
    path: '/api/notes/{id}/withdraw',
    right: 'note',
    reply: noteSchema,
    query: null,
    body: noteWithdrawalRequestSchema,
    faults: [
      'ACTOR_DIFFERS',
      'NOTE_UNKNOWN',
      'NOTE_CORRECTED_ALREADY',
      'NOTE_WITHDRAWN_ALREADY',
      'JOURNAL_UNAVAILABLE',
    ],
  },
  {
    method: 'post',
    path: '/api/handovers',
    right: 'note',
    reply: handoverSchema,
    query: null,
    body: handOverRequestSchema,
    faults: ['ACTOR_DIFFERS', 'HALL_UNKNOWN', 'HANDOVER_TIME', 'HANDOVER_SAME_PERSON', 'JOURNAL_UNAVAILABLE'],
  },
  {
    method: 'post',
    path: '/api/handovers/{id}/take',
    right: 'note',
    reply: handoverSchema,
    query: null,
    body: takeOverRequestSchema,
    faults: [
      'ACTOR_DIFFERS',
      'HANDOVER_UNKNOWN',
      'HANDOVER_TAKEN_ALREADY',
      'HANDOVER_SAME_PERSON',
      'JOURNAL_UNAVAILABLE',
    ],
  },
] as const satisfies readonly RouteRow[];
