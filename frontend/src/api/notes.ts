import type { HandOverRequest, Handover, TakeOverRequest } from '@ebbline/shared/contract/handover';
import { handoverSchema } from '@ebbline/shared/contract/handover';
import type { Note, NoteCorrectionRequest, NoteRequest, NoteWithdrawalRequest } from '@ebbline/shared/contract/notes';
import { noteSchema } from '@ebbline/shared/contract/notes';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** Each resolves with the note, or the handover, as the journal holds it now. */
export const writeNote = (wish: NoteRequest): Promise<Result<Note>> =>
  request('/api/notes', noteSchema, { body: wish });

export const correctNote = (note: string, wish: NoteCorrectionRequest): Promise<Result<Note>> =>
  request(`/api/notes/${encodeURIComponent(note)}/correct`, noteSchema, { body: wish });

export const withdrawNote = (note: string, wish: NoteWithdrawalRequest): Promise<Result<Note>> =>
  request(`/api/notes/${encodeURIComponent(note)}/withdraw`, noteSchema, { body: wish });

export const handOver = (wish: HandOverRequest): Promise<Result<Handover>> =>
  request('/api/handovers', handoverSchema, { body: wish });

export const takeOver = (handover: string, wish: TakeOverRequest): Promise<Result<Handover>> =>
  request(`/api/handovers/${encodeURIComponent(handover)}/take`, handoverSchema, { body: wish });
