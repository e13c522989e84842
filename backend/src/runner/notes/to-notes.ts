import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { Note } from '@ebbline/shared/contract/notes';

export const noteId = (sequence: number): string => `n${sequence}`;

/** Sequence that an id of a note or a handover names; null where it is none. */
export function sequenceOf(id: string, letter: 'n' | 'h'): number | null {
  const digits = new RegExp(`^${letter}([1-9][0-9]{0,14})$`).exec(id)?.[1];
  return digits === undefined ? null : Number(digits);
}

/** The notes among these rows, in order of the time that they speak of. Rows that follow one must be among them. */
export function toNotes(rows: readonly JournalRow[]): Note[] {
  const correctedBy = new Map<number, JournalRow>();
  const withdrawnBy = new Map<number, JournalRow>();
  for (const row of rows) {
    const of = row.facts?.of;
    if (of === undefined) continue;
    if (row.cause === 'noteCorrected') correctedBy.set(of, row);
    if (row.cause === 'noteWithdrawn') withdrawnBy.set(of, row);
  }
  return rows
    .filter(({ cause }) => cause === 'noteWritten' || cause === 'noteCorrected')
    .map((row) => toNote(row, correctedBy.get(row.sequence), withdrawnBy.get(row.sequence)))
    .sort((one, other) => one.about.localeCompare(other.about) || sequence(one) - sequence(other));
}

function toNote(row: JournalRow, corrected: JournalRow | undefined, withdrawn: JournalRow | undefined): Note {
  const of = row.facts?.of;
  return {
    id: noteId(row.sequence),
    text: row.reason ?? '',
    by: row.actor ?? '',
    station: row.station ?? '',
    writtenAt: row.time,
    about: row.sourceTime,
    hall: row.hall ?? null,
    unit: row.unit,
    alarm: row.alarm,
    corrects: of === undefined ? null : noteId(of),
    why: row.facts?.why ?? null,
    correctedBy: corrected === undefined ? null : noteId(corrected.sequence),
    withdrawn:
      withdrawn === undefined
        ? null
        : { by: withdrawn.actor ?? '', at: withdrawn.sourceTime, reason: withdrawn.reason ?? '' },
  };
}

const sequence = ({ id }: Note): number => sequenceOf(id, 'n') ?? 0;
