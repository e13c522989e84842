import type { AlarmState, Priority } from '@ebbline/shared/contract/alarm';
import type { AlarmMode } from '@ebbline/shared/contract/alarm-modes';
import type { ModeEvent } from './mode-table';
import { isSetAside, type ModeFacts } from './mode-facts';

/**
 * A change of an alarm's state or mode that the journal must commit before anyone is shown it. `mode` is the one after the
 * change; where it leaves a mode, the other facts tell of the one that it leaves: since when, until when, by whom, why.
 * A passage into `unacknowledged` is an annunciation: it happens in service only.
 */
export interface AlarmTransition extends ModeFacts {
  readonly alarm: string;
  readonly entry: string;
  readonly unit: string | null;
  readonly hall: string | null;
  readonly from: AlarmState;
  readonly to: AlarmState;
  readonly cause:
    'conditionTrue' | 'conditionClear' | 'acknowledge' | 'reset' | 'configuration' | 'reAlarm' | ModeEvent;
  /** The mode before, where the mode changed. */
  readonly modeFrom?: AlarmMode;
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

/**
 * What an alarm is that stands or is set aside, as kept by the lifecycle and restored from the journal. Plain JSON; never
 * changed in place.
 */
export interface AlarmRecord extends ModeFacts {
  readonly alarm: string;
  readonly entry: string;
  readonly unit: string | null;
  readonly hall: string | null;
  readonly state: AlarmState;
  readonly active: boolean;
  readonly priority: Priority;
  readonly sinceMs: number;
  readonly stateSinceMs: number;
  /** When it was last told, kept once it is told no longer; while it is unacknowledged, `stateSinceMs` says it. */
  readonly toldAtMs?: number;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unitOfMeasure: string | null;
  readonly where: string | null;
  readonly detail?: string;
  readonly foldedUnder: string | null;
  readonly acknowledgedBy: string | null;
  readonly acknowledgedAtMs: number | null;
}

/** Stands, or is set aside: has to be known after a restart. */
export const isKept = (record: AlarmRecord): boolean => record.state !== 'normal' || isSetAside(record);
