import type { ValueProvider } from '@nestjs/common';
import { NOTE_DESK, type NoteDesk } from '../ports/note-desk';
import { JournalNoteDesk, type NoteDeskParts } from '../runner/notes/note-desk';

/** Notes and handovers, for the routes. */
export const openNoteDesk = (parts: NoteDeskParts): ValueProvider<NoteDesk> => ({
  provide: NOTE_DESK,
  useValue: new JournalNoteDesk(parts),
});
