import type { Alarm, JournalRow } from '@ebbline/shared/contract/alarm';
import type { Alert } from '@ebbline/shared/contract/alert';
import type { LoopFrame } from '@ebbline/shared/contract/live-feed';
import type { Reading } from '@ebbline/shared/contract/reading';
import type { ScheduledCommand } from '../../simulator/src/scenario/schedule';
import type { Ebbline } from '../helpers/ebbline';
import type { Lapse } from './lapse-telemetry';

/** What a person could see at one moment of source time: everything asked of the running program, nothing of its inside. */
export interface Seen {
  /** Seconds since the story's onset. */
  readonly atS: number;
  readonly alarms: readonly Alarm[];
  readonly alerts: readonly Alert[];
  readonly journal: readonly JournalRow[];
  /** `GET /api/units/{unit}/points`. */
  reading(unit: string, point: string): Reading | undefined;
  /** The Loop screen of a unit, as the live feed sent it. */
  loop(unit: string): LoopFrame | undefined;
}

/** Something that must be seen, at the latest so many seconds after the onset. */
export interface Sight {
  readonly byS: number;
  readonly what: string;
  readonly see: (seen: Seen) => boolean;
}

/** Something that must not be seen, at no moment that is looked at, from the onset on. */
export interface Taboo {
  readonly what: string;
  readonly see: (seen: Seen) => boolean;
}

/** Something that a person does, through the API. */
export interface Deed {
  readonly atS: number;
  readonly what: string;
  readonly act: (ebbline: Ebbline, nowMs: number) => Promise<unknown>;
}

export interface Story {
  readonly title: string;
  /** Units of the demo site that it is about; nobody else is there. */
  readonly units: readonly string[];
  readonly startsAt: string;
  /** Quiet running before the onset, s. */
  readonly quietS: number;
  /** So long it is looked at after the onset, s. */
  readonly lastsS: number;
  /** Only every so manieth second is told, and the site file says so: for stories of hours. Default 1. */
  readonly everyS?: number;
  /** For stories of days: most of the time is left out of the plants. */
  readonly lapse?: Lapse;
  /** Commands to the simulated plant; `atS` counts from the onset. */
  readonly happens: readonly ScheduledCommand[];
  readonly deeds?: readonly Deed[];
  readonly mustSee: readonly Sight[];
  readonly mustNotSee: readonly Taboo[];
  /** Changes to the demo site's file for these units. */
  readonly site?: (site: Record<string, unknown>) => Record<string, unknown>;
}
