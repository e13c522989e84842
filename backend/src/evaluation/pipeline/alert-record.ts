/** Something for an engineer's list: no lifecycle but coming and going, no sound, no acknowledgement. Plain JSON. */
export interface AlertRecord {
  readonly alert: string;
  readonly entry: string;
  readonly unit: string | null;
  readonly hall: string | null;
  readonly sinceMs: number;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unitOfMeasure: string | null;
  readonly where: string | null;
  readonly detail?: string;
}

/** Goes to the journal as a system row. */
export interface AlertChange {
  readonly what: 'came' | 'went';
  readonly alert: AlertRecord;
  readonly atMs: number;
}

/** An alert that stands, and whether it is in the list: one that follows from an alarm is not. */
export interface StandingAlert {
  readonly record: AlertRecord;
  readonly shown: boolean;
}
