import type { NoteEntry } from '../../ports/note-entry';
import { factsText } from './journal-facts';
import type { JournalEntry } from './journal-entry';
import { storedText } from './stored-text';
import { nothing } from './to-journal-entry';

/** A note or a handover: of an alarm by its name alone, and without a record, so that the standing alarms stay as they are. */
export function noteEntry(note: NoteEntry, wallMs: number): JournalEntry {
  return {
    ...nothing,
    recordedMs: Math.round(wallMs),
    happenedMs: Math.round(note.atMs),
    kind: 'action',
    cause: note.cause,
    alarm: storedText(note.alarm),
    unit: storedText(note.unit),
    hall: storedText(note.hall),
    actor: storedText(note.actor),
    station: storedText(note.station),
    reason: storedText(note.text),
    facts: factsText({ of: note.of, why: note.why, shift: note.shift }),
  };
}
