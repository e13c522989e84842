import type { AlarmState, Priority } from '@ebbline/shared/contract/alarm';

/** A change of an alarm's state that the journal must commit before anyone is shown it. */
export interface AlarmTransition {
  readonly alarm: string;
  readonly entry: string;
  readonly unit: string | null;
  readonly hall: string | null;
  readonly from: AlarmState;
  readonly to: AlarmState;
  readonly cause: 'conditionTrue' | 'conditionClear' | 'acknowledge' | 'reset' | 'configuration';
  readonly priority: Priority;
  /** Tick time of the change, ms. */
  readonly atMs: number;
  /** When the condition became true (before the on-delay), ms. */
  readonly sinceMs: number;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unitOfMeasure: string | null;
  readonly where: string | null;
  /** What is known of this very case; absent where nothing more is. */
  readonly detail?: string;
  readonly foldedUnder: string | null;
  readonly actor: string | null;
  readonly station: string | null;
  readonly comment: string | null;
}

/** What a standing alarm is, as kept by the lifecycle and restored from the journal. Plain JSON; never changed in place. */
export interface AlarmRecord {
  readonly alarm: string;
  readonly entry: string;
  readonly unit: string | null;
  readonly hall: string | null;
  readonly state: AlarmState;
  readonly active: boolean;
  readonly priority: Priority;
  readonly sinceMs: number;
  readonly stateSinceMs: number;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unitOfMeasure: string | null;
  readonly where: string | null;
  readonly detail?: string;
  readonly foldedUnder: string | null;
  readonly acknowledgedBy: string | null;
  readonly acknowledgedAtMs: number | null;
}
