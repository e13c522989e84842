import type { z } from 'zod';
import type { Alarm, Priority } from './alarm';
import type { Flood } from './alarm-performance';
import type { Alert } from './alert';
import type { Permit } from './permit';
import type { brokerStateSchema, clockStateSchema, Mode } from './http-api';
import type { Quality, QualityReason, Reading } from './reading';

/** What a screen asks to be shown. The newest request of a client replaces the one before. */
export type View =
  | { readonly screen: 'hall'; readonly hall: string }
  | { readonly screen: 'loop'; readonly unit: string }
  | { readonly screen: 'alarms' }
  | { readonly screen: 'trends'; readonly points: readonly TrendPoint[] };

/** A point that a trend follows; at most `maximumTrendPoints` of them. */
export interface TrendPoint {
  readonly unit: string;
  readonly point: string;
}
export const maximumTrendPoints = 24;

/** A number for a picture: as a `Reading`, without the words around it. Ages in seconds at `Frame.time`. */
export interface Figure {
  readonly value: number | null;
  readonly age: number | null;
  readonly quality: Quality;
  readonly reasons: readonly QualityReason[];
  readonly expandedUncertainty: number | null;
}

/** The three walls that can bind on the low-pressure side: boiling at a node, the NPSH of the pump, boiling on a hot plate. */
export type LowerWallKind = 'node' | 'pumpInlet' | 'plateWall';

/** One loop between its two walls, Pa absolute. Everything null where it can't be known. */
export interface PressureWindow {
  readonly lowestPa: number | null;
  readonly lowestWhere: string | null;
  readonly highestPa: number | null;
  readonly highestWhere: string | null;
  readonly ambientPa: number | null;
  /** Where the wall that binds stands: `lowestPa` − margin of that wall. */
  readonly lowerWallPa: number | null;
  readonly lowerWallKind: LowerWallKind | null;
  readonly lowerWallWhere: string | null;
  readonly lowerWallMargin: Figure;
  readonly vacuumMargin: Figure;
  readonly vacuumMarginWorst: Figure;
  /** Guards below which a gap is coloured, Pa. */
  readonly lowerWallGuardPa: number | null;
  readonly vacuumMarginGuardPa: number;
  /** Lowest and highest of the last hour (from history on restart: fills as time passes). */
  readonly hourLowestPa: number | null;
  readonly hourHighestPa: number | null;
}

export interface LoopLine {
  readonly unit: string;
  readonly name: string;
  readonly mode: Mode;
  readonly modeKnown: boolean;
  readonly age: number | null;
  readonly pressureWindow: PressureWindow;
  readonly heatRemoved: Figure;
  readonly chipPower: Figure;
  readonly drivingPressure: Figure;
  /** With one source. */
  readonly vacuumReserve: Figure;
  /** Open hoses of this site still carried, with one source and with all. */
  readonly openingsCarried: Figure;
  readonly openingsCarriedAll: Figure;
  readonly openPermits: number;
  /** Stopped and vented under an open permit: shown in place of a margin. */
  readonly ventedNotProtected: boolean;
  /** The alarm that most needs a person, and how many more stand. */
  readonly worst: Pick<
    Alarm,
    'id' | 'entry' | 'title' | 'priority' | 'state' | 'where' | 'action' | 'since' | 'detail'
  > | null;
  readonly moreAlarms: number;
  /** Most urgent of the standing alarms of each margin, told or folded; absent: none stands. */
  readonly gaps?: { readonly left: Priority | null; readonly right: Priority | null } | undefined;
  /** Alarms of the unit that a person has set aside while their condition holds; absent: none. */
  readonly setAsideHolding?: number | undefined;
}

/** A place on the water's way, in order from supply tank to separator. */
export interface PathPlace {
  readonly id: string;
  readonly name: string;
  readonly elevation: number | null;
  readonly pressurePa: number | null;
  readonly vapourPressurePa: number | null;
  readonly temperature: number | null;
  /** False inside the unit, where pressure above ambient is by design. */
  readonly outsideUnit: boolean;
}

export interface BranchShare {
  readonly id: string;
  readonly name: string;
  readonly flow: Figure;
  readonly ratedFlow: number | null;
  readonly returnTemperature: Figure;
  readonly hottestPlate: Figure;
  /** Whose temperature that is; null where there is none. */
  readonly hottestPlateId: string | null;
  readonly heatRemoved: Figure;
  readonly returnPressure: Figure;
  /** Ambient less its own measured pressure, Pa: the only margin that holds while it is isolated. */
  readonly vacuumMargin: Figure;
  /** Flow ÷ expected share. */
  readonly flowShare: Figure;
  /** isolated: valved off, its trapped water is not protected by the loop's margin. */
  readonly state: 'inLoop' | 'isolated' | 'openUnderPermit';
}

export interface ServerLine {
  readonly id: string;
  readonly name: string;
  readonly branch: string | null;
  readonly returnTemperature: Figure;
  readonly power: Figure;
  readonly fanSpeed: Figure;
  readonly hottestPlate: Figure;
  /** Whose temperature that is; null where there is none. */
  readonly hottestPlateId: string | null;
}

/** An alarm that calls for a person: not acknowledged, standing under no other, and not set aside. */
export interface CallingAlarm {
  readonly id: string;
  readonly unit: string | null;
  readonly title: string;
  readonly where: string | null;
  readonly priority: Priority;
  /** Since when it calls; another time is another call. */
  readonly since: string;
}

export interface Calling {
  readonly total: number;
  /** The newest first; at most `mostCallingListed`, and of more the most urgent: what sounds is chosen among these. */
  readonly newest: readonly CallingAlarm[];
}
export const mostCallingListed = 100;

/** A standing alarm of no single unit – of the hall, of a loop or gateway of several units, or of the program. */
export type BesideAlarm = Pick<
  Alarm,
  'id' | 'hall' | 'title' | 'priority' | 'state' | 'where' | 'since' | 'acknowledgedBy'
>;

interface FrameBase {
  /** Counts up by one for each frame built for this client; a gap is a frame that newer data replaced. */
  readonly sequence: number;
  readonly time: string | null;
  readonly clock: z.infer<typeof clockStateSchema>;
  readonly broker: z.infer<typeof brokerStateSchema>;
  /** Standing alarms of the whole site by priority. */
  readonly standing: { readonly [P in Priority]: number };
  /** Alarms of the whole site that call; absent: none. */
  readonly calling?: Calling;
}

export interface HallFrame extends FrameBase {
  readonly screen: 'hall';
  readonly hall: string;
  readonly name: string;
  readonly ambientPressure: Figure;
  readonly temperature: Figure;
  readonly dewPoint: Figure;
  readonly heatRemoved: Figure;
  readonly chipPower: Figure;
  readonly smallestMargin: { readonly unit: string; readonly margin: Figure } | null;
  readonly loops: readonly LoopLine[];
  /** What stands and no line could show, acknowledged too; of other halls only what calls. Worst first; absent: none. */
  readonly beside?: readonly BesideAlarm[];
  /** How many of this hall and of no single unit are set aside while their condition holds; absent: none. */
  readonly besideSetAside?: number | undefined;
  readonly permits: readonly Permit[];
}

export interface LoopFrame extends FrameBase {
  readonly screen: 'loop';
  readonly unit: string;
  readonly hall: string;
  readonly line: LoopLine;
  readonly points: readonly Reading[];
  readonly path: readonly PathPlace[];
  readonly branches: readonly BranchShare[];
  readonly servers: readonly ServerLine[];
  /** The water path that the unit is on, and who else is on it. */
  readonly loop: {
    readonly id: string;
    readonly name: string;
    readonly units: readonly string[];
    readonly unitsNeeded: number;
  };
  readonly permits: readonly Permit[];
  readonly alerts: readonly Alert[];
  readonly alarms: readonly Alarm[];
  /** How many of its gateway, or of its loop of several units, are set aside while their condition holds; absent: none. */
  readonly besideSetAside?: number | undefined;
}

/** What the Hall screen draws, of now or of a past moment: a frame without what only a live feed has. */
export type HallPicture = Omit<HallFrame, 'sequence' | 'broker' | 'calling' | 'beside'>;

/** The same of the Loop screen. */
export type LoopPicture = Omit<LoopFrame, 'sequence' | 'broker' | 'calling'>;

export interface AlarmsFrame extends FrameBase {
  readonly screen: 'alarms';
  readonly alarms: readonly Alarm[];
  readonly alerts: readonly Alert[];
  readonly permits: readonly Permit[];
  /** The flood that goes on; null or left out: none. */
  readonly flood?: Flood | null;
  /** How many alarms are set aside, on the whole site. */
  readonly setAside?: number;
  /** How many of them a person has set aside while their condition holds; absent: none. */
  readonly setAsideHolding?: number | undefined;
  /** Units of which nothing has come since the program started: no alarm of them says nothing. Left out: not known. */
  readonly unheard?: number;
}

/** The newest reading of each point that was asked for, in that order. */
export interface TrendsFrame extends FrameBase {
  readonly screen: 'trends';
  readonly readings: readonly { readonly unit: string; readonly reading: Reading }[];
}

export type Frame = HallFrame | LoopFrame | AlarmsFrame | TrendsFrame;

/** Why a request to be shown something was refused. */
export interface ViewRefusal {
  readonly code:
    | 'VIEW_UNKNOWN_HALL'
    | 'VIEW_UNKNOWN_UNIT'
    | 'VIEW_UNKNOWN_POINT'
    | 'VIEW_MALFORMED'
    | 'VIEW_TOO_OFTEN'
    /** The socket ends with it. */
    | 'SIGN_IN_NEEDED';
  readonly message: string;
}

/**
 * The typed event map. A client sends `show`; the server sends `frame` and waits for the client's
 * acknowledgement before it sends that client another: one in flight, the newest wins, no backlog.
 */
export interface ServerToScreen {
  frame: (frame: Frame, taken: () => void) => void;
  refused: (refusal: ViewRefusal) => void;
}

export interface ScreenToServer {
  show: (view: View) => void;
}
