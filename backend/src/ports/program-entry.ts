import type { JournalFacts } from '@ebbline/shared/contract/journal-facts';

/** Causes of the rows that tell of the program's own runs. They stand in the journal and are never renamed. */
export const programCauses = ['programStarted', 'programEnded'] as const;
export type ProgramCause = (typeof programCauses)[number];

/** The program began to watch, or ended in order, as it goes into the journal. */
export interface ProgramEntry {
  readonly cause: ProgramCause;
  readonly program: NonNullable<JournalFacts['program']>;
  /** A sentence. */
  readonly reason: string;
}
