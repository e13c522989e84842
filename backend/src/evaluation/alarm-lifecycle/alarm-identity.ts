import type { Priority } from '@ebbline/shared/contract/alarm';

/** Who an alarm is; told once, when it is raised for the first time. */
export interface AlarmIdentity {
  readonly alarm: string;
  readonly entry: string;
  readonly unit: string | null;
  readonly hall: string | null;
  readonly latching: boolean;
}

/** What was seen when the condition changed. */
export interface AlarmFacts {
  readonly priority: Priority;
  readonly sinceMs: number;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unitOfMeasure: string | null;
  readonly where: string | null;
  readonly detail?: string;
  readonly foldedUnder: string | null;
}

export interface Actor {
  readonly operator: string;
  readonly station: string;
  readonly comment: string;
}
