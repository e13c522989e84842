import type { Priority } from '@ebbline/shared/contract/alarm';

/** One time that an alarm was told to the operator, and what became of it. */
export interface Annunciation {
  readonly atMs: number;
  readonly alarm: string;
  readonly entry: string;
  readonly unit: string | null;
  readonly hall: string | null;
  readonly priority: Priority;
  /** When a person said "seen"; null: not yet, or told once more before. */
  acknowledgedMs: number | null;
  /** When the condition went; null: it goes on, the alarm was told once more, or was set aside. */
  clearedMs: number | null;
  /** It was found later to follow from another alarm. */
  foldedLater: boolean;
}

/** A time in which an alarm stood before the operator: in service, under no other, and not returned. */
export interface Standing {
  readonly alarm: string;
  readonly entry: string;
  readonly unit: string | null;
  readonly fromMs: number;
  /** Infinity: it goes on. */
  readonly toMs: number;
}
