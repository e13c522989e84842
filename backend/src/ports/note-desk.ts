import type { HandOverRequest, Handover, HandoverFault, TakeOverRequest } from '@ebbline/shared/contract/handover';
import type {
  Note,
  NoteCorrectionRequest,
  NoteFault,
  NoteList,
  NoteRequest,
  NoteWithdrawalRequest,
} from '@ebbline/shared/contract/notes';
import type { Failure, Result } from '@ebbline/shared/errors/result';
import type { Actor } from './identity';

export interface NotesWanted {
  /** Notes about [fromMs, toMs). */
  readonly fromMs: number;
  readonly toMs: number;
  /** Null: not narrowed. */
  readonly hall: string | null;
  readonly unit: string | null;
}

export type NoteDeskFault = Failure<
  NoteFault | HandoverFault | 'HALL_UNKNOWN' | 'UNIT_UNKNOWN' | 'JOURNAL_UNAVAILABLE'
>;

/** What people write down, and shifts that hand over: confirmed once the journal has it, and never changed. */
export interface NoteDesk {
  notes(wanted: NotesWanted): Result<NoteList, NoteDeskFault>;
  write(request: NoteRequest, actor: Actor): Result<Note, NoteDeskFault>;
  correct(id: string, request: NoteCorrectionRequest, actor: Actor): Result<Note, NoteDeskFault>;
  withdraw(id: string, request: NoteWithdrawalRequest, actor: Actor): Result<Note, NoteDeskFault>;
  /** Handovers of shifts that have a moment within [fromMs, toMs), of a hall or of the whole site; the oldest first. */
  handovers(wanted: Omit<NotesWanted, 'unit'>): readonly Handover[];
  handOver(request: HandOverRequest, actor: Actor): Result<Handover, NoteDeskFault>;
  takeOver(id: string, request: TakeOverRequest, actor: Actor): Result<Handover, NoteDeskFault>;
}

export const NOTE_DESK = Symbol('NoteDesk');
