import type { Note } from '@ebbline/shared/contract/notes';

/** Notes that stand too near to each other to be hit one by one. */
export interface NoteGroup {
  /** Of the first of them, as a share of the width, 0 to 1. */
  readonly left: number;
  readonly notes: readonly Note[];
}

/** @param notes the oldest first @param from @param to ends of the axis, s since 1970 @param leastShare between two marks */
export function groupNotes(notes: readonly Note[], from: number, to: number, leastShare: number): readonly NoteGroup[] {
  const groups: { left: number; notes: Note[] }[] = [];
  for (const note of notes) {
    const left = Math.min(1 - leastShare, (Date.parse(note.about) / 1000 - from) / (to - from));
    if (left < 0) continue;
    const last = groups.at(-1);
    if (last !== undefined && left - last.left < leastShare) last.notes.push(note);
    else groups.push({ left, notes: [note] });
  }
  return groups;
}
