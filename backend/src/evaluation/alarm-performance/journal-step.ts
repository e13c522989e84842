import type { AlarmState, Priority } from '@ebbline/shared/contract/alarm';
import type { AlarmMode } from '@ebbline/shared/contract/alarm-modes';

/** Of one row of the journal what the figures are reckoned from. Times are ms since the epoch. */
export interface JournalStep {
  readonly sequence: number;
  /** When it happened by the clock in force. */
  readonly atMs: number;
  readonly kind: 'transition' | 'action' | 'system';
  readonly cause: string | null;
  readonly alarm: string | null;
  readonly unit: string | null;
  readonly hall: string | null;
  readonly entry: string | null;
  readonly from: AlarmState | null;
  /** Null: the row is of no alarm, such as a permit or an alert. */
  readonly to: AlarmState | null;
  readonly priority: Priority | null;
  readonly foldedUnder: string | null;
  readonly sinceMs: number | null;
  readonly actor: string | null;
  /** As the alarm stands after the row; null: the row does not say. */
  readonly mode: AlarmMode | null;
}

/** What a change of mode leads to, for rows that name the event and not the mode. */
export const modeOfCause: Readonly<Record<string, AlarmMode>> = {
  shelve: 'shelved',
  takeOut: 'outOfService',
  suppress: 'suppressedByDesign',
  unshelve: 'inService',
  shelvingOver: 'inService',
  unsuppress: 'inService',
  returnToService: 'inService',
};

/** Causes of the rows that say when a flood began and ended. */
export const floodCauses = { began: 'floodBegan', ended: 'floodEnded' } as const;
