/** Causes of the rows of notes and handovers. They stand in the journal and are never renamed. */
export const noteCauses = [
  'noteWritten',
  'noteCorrected',
  'noteWithdrawn',
  'shiftHandedOver',
  'shiftTakenOver',
] as const;
export type NoteCause = (typeof noteCauses)[number];

export const isNoteCause = (cause: string | null | undefined): boolean => noteCauses.some((one) => one === cause);

/** Those that say something of an earlier row. */
export const followingCauses = [
  'noteCorrected',
  'noteWithdrawn',
  'shiftTakenOver',
] as const satisfies readonly NoteCause[];

/** A note or a handover as it goes into the journal. */
export interface NoteEntry {
  readonly cause: NoteCause;
  /** The time that it speaks of; of a handover and of what follows another row, when it was done. */
  readonly atMs: number;
  readonly hall: string | null;
  readonly unit: string | null;
  readonly alarm: string | null;
  readonly actor: string;
  readonly station: string;
  /** The note; of a withdrawal the reason. */
  readonly text: string;
  /** Sequence of the row that it corrects, withdraws or takes over. */
  readonly of: number | null;
  /** Why a note is corrected. */
  readonly why: string | null;
  /** The shift that is handed over, and who is to take it. */
  readonly shift: { readonly from: string; readonly to: string; readonly takerNamed: string } | null;
}
