import type { HallTrails } from '@ebbline/shared/contract/hall-trails';
import type { PastHall, PastMarks, PastUnit } from '@ebbline/shared/contract/past';
import type { Failure, Result } from '@ebbline/shared/errors/result';

export type PastFault = Failure<
  'HALL_UNKNOWN' | 'UNIT_UNKNOWN' | 'PAST_NOT_YET' | 'PAST_BEFORE_RECORDS' | 'PAST_NOT_KEPT' | 'TOO_MANY_REQUESTS'
>;

export interface MarksWanted {
  /** Null: not narrowed to one. */
  readonly hall: string | null;
  readonly unit: string | null;
  /** Half-open [fromMs, toMs), at most a day. */
  readonly fromMs: number;
  readonly toMs: number;
}

/** Past seconds as they stood: from what was recorded and from the journal, never from now. */
export interface PastDesk {
  hall(hall: string, atMs: number): Promise<Result<PastHall, PastFault>>;
  /** The hour of each of its loops that ended with a second; open where only minutes are kept of then. */
  trails(hall: string, atMs: number): Promise<Result<HallTrails, PastFault>>;
  unit(unit: string, atMs: number): Promise<Result<PastUnit, PastFault>>;
  marks(wanted: MarksWanted): Promise<Result<PastMarks, PastFault>>;
}

export const PAST_DESK = Symbol('PastDesk');
