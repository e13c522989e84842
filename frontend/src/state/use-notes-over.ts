import type { Note } from '@ebbline/shared/contract/notes';
import { fail, ok } from '@ebbline/shared/errors/result';
import type { ShallowRef } from 'vue';
import { readNotesOver } from '../api/trends';
import type { OverSpan } from './use-over-span';
import { useOverSpan } from './use-over-span';

export interface NotesOver {
  /** Those that stand, the oldest first, each once. */
  readonly notes: readonly Note[];
  /** There are more than were given. */
  readonly more: boolean;
}

export interface NotesOverOptions {
  readonly units: () => readonly string[];
  /** False where they are not to be drawn: nothing is asked for then. */
  readonly wanted: () => boolean;
  readonly span: () => { readonly fromMs: number; readonly toMs: number } | null;
  readonly following: () => boolean;
  /** As of any span. */
  readonly nowMs?: () => number | null;
  /** Default: the server. */
  readonly read?: typeof readNotesOver;
}

/** What people wrote about some units within a span; corrected and withdrawn notes are left to the journal. */
export function useNotesOver({
  following,
  nowMs,
  read = readNotesOver,
  span,
  units,
  wanted,
}: NotesOverOptions): Readonly<ShallowRef<OverSpan<NotesOver>>> {
  return useOverSpan({
    wish: () => (wanted() && units().length > 0 ? units().join(',') : null),
    span,
    following,
    nowMs,
    async read(time) {
      const byId = new Map<string, Note>();
      let more = false;
      for (const unit of units()) {
        const reply = await read(unit, time);
        if (!reply.ok) return fail(reply.fault);
        more ||= reply.value.more;
        for (const note of reply.value.notes)
          if (note.correctedBy === null && note.withdrawn === null) byId.set(note.id, note);
      }
      const notes = [...byId.values()].sort((one, other) => one.about.localeCompare(other.about));
      return ok({ notes, more });
    },
  });
}
