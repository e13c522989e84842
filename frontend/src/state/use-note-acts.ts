import type { HandOverRequest, Handover, TakeOverRequest } from '@ebbline/shared/contract/handover';
import type { Note, NoteCorrectionRequest, NoteRequest, NoteWithdrawalRequest } from '@ebbline/shared/contract/notes';
import { correctNote, handOver, takeOver, withdrawNote, writeNote } from '../api/notes';
import type { OneAct } from './use-acting';
import { useActing } from './use-acting';

/** A new note, another in place of one that was wrong, or that one is taken back. */
export type NoteWish =
  | { readonly does: 'write'; readonly wish: NoteRequest }
  | { readonly does: 'correct'; readonly note: string; readonly wish: NoteCorrectionRequest }
  | { readonly does: 'withdraw'; readonly note: string; readonly wish: NoteWithdrawalRequest };

export const useNoteActs = (): OneAct<NoteWish, Note> =>
  useActing((asked: NoteWish) => {
    switch (asked.does) {
      case 'write':
        return writeNote(asked.wish);
      case 'correct':
        return correctNote(asked.note, asked.wish);
      case 'withdraw':
        return withdrawNote(asked.note, asked.wish);
    }
  });

export type HandoverWish =
  | { readonly does: 'handOver'; readonly wish: HandOverRequest }
  | { readonly does: 'takeOver'; readonly handover: string; readonly wish: TakeOverRequest };

export const useHandoverActs = (): OneAct<HandoverWish, Handover> =>
  useActing((asked: HandoverWish) =>
    asked.does === 'handOver' ? handOver(asked.wish) : takeOver(asked.handover, asked.wish),
  );
