import type { AcknowledgeRequest, Alarm, AlarmList } from '@ebbline/shared/contract/alarm';
import type { AlarmActionFault } from '@ebbline/shared/contract/alarm-action-faults';
import type {
  AcknowledgeManyReply,
  AcknowledgeManyRequest,
  BringBackRequest,
  FoundAlarms,
  SetAsideAlarm,
  SetAsideList,
  ShelveRequest,
  TakeOutOfServiceRequest,
} from '@ebbline/shared/contract/alarm-modes';
import type { AlertList } from '@ebbline/shared/contract/alert';
import type { BroughtBack } from '@ebbline/shared/contract/brought-back';
import type { Explanation } from '@ebbline/shared/contract/explanation';
import type { HallTrails } from '@ebbline/shared/contract/hall-trails';
import type { ClockState, PointList, Site, UnitList } from '@ebbline/shared/contract/http-api';
import type {
  AlarmsFrame,
  HallFrame,
  LoopFrame,
  TrendsFrame,
  View,
  ViewRefusal,
} from '@ebbline/shared/contract/live-feed';
import type {
  ClosePermitRequest,
  OpenPermitRequest,
  Permit,
  PermitFault,
  PermitList,
} from '@ebbline/shared/contract/permit';
import type { LimitList, Setup } from '@ebbline/shared/contract/setup';
import type { Result } from '@ebbline/shared/errors/result';
import type { Actor } from './identity';

/** A frame without what differs from client to client. */
export type FrameBody =
  | Omit<HallFrame, 'sequence'>
  | Omit<LoopFrame, 'sequence'>
  | Omit<AlarmsFrame, 'sequence'>
  | Omit<TrendsFrame, 'sequence'>;

/** Why an action at an alarm has no effect. */
export type ActionFault =
  | { readonly code: 'ALARM_UNKNOWN'; readonly message: string }
  | {
      readonly code: 'ALARM_ALREADY_ACKNOWLEDGED';
      readonly message: string;
      readonly acknowledgedBy: string | null;
      readonly acknowledgedAt: string | null;
    }
  | {
      readonly code: Exclude<AlarmActionFault, 'ALARM_UNKNOWN' | 'ALARM_ALREADY_ACKNOWLEDGED'>;
      readonly message: string;
    }
  | { readonly code: 'JOURNAL_UNAVAILABLE'; readonly message: string };

/** Why a permit was not opened or closed. */
export interface PermitActionFault {
  readonly code: PermitFault | 'JOURNAL_UNAVAILABLE';
  readonly message: string;
}

/** What differs from the last look: an alarm or the broker's link, or values alone. */
export type Change = 'nothing' | 'values' | 'news';

/** Looks again and again at what one view shows and tells whether it differs from the last look. */
export interface Watch {
  /** Never 'nothing' on the first look. */
  changed(): Change;
  /** How long after one frame the next may wait that has only newer values, ms. */
  paceMs(): number;
}

/** What there is to be seen now, in the words of the contract. Alarms as the journal has committed them. */
export interface LiveView {
  clock(): ClockState;
  site(): Site;
  units(): UnitList;
  /** Null where there is no such unit. */
  points(unit: string): PointList | null;
  alarms(): AlarmList;
  /** What is not told: shelved, suppressed by design, out of service. */
  setAside(): SetAsideList;
  /** Alarms that the site can have in whose names every word of the search stands, no alerts. */
  findAlarms(search: string): FoundAlarms;
  alerts(): AlertList;
  permits(): PermitList;
  /** Null where there is no such unit. */
  setup(unit: string): Setup | null;
  /** Null where there is no such unit. */
  limits(unit: string): LimitList | null;
  /** Null where there is no such hall. */
  hallTrails(hall: string): HallTrails | null;
  /** True where the site file names the topic. */
  hasTopic(topic: string): boolean;
  /** Null where the view can be shown. */
  refusalOf(view: View): ViewRefusal | null;
  /** Of a view that was not refused. */
  frame(view: View): FrameBody;
  watch(view: View): Watch;
  /** What stands behind the value of a point of a unit, or of its hall. */
  explanation(unit: string, point: string): Explanation | 'unitUnknown' | 'pointUnknown';
  /** What stands behind a point of a hall, or behind a sum over its units. */
  hallExplanation(hall: string, point: string): Explanation | 'hallUnknown' | 'pointUnknown';
  /** Who keeps a point of a unit (itself, or its hall), and how it is stored. */
  findPoint(
    unit: string,
    point: string,
  ):
    | { readonly holder: string; readonly point: string; readonly unitOfMeasure: string }
    | 'unitUnknown'
    | 'pointUnknown';
}

/** What a person may do. Answers only after the journal has committed it. */
export interface Operations {
  acknowledge(alarm: string, request: AcknowledgeRequest, actor: Actor): Result<Alarm, ActionFault>;
  /** Each by itself: some may be done and others not. */
  acknowledgeMany(request: AcknowledgeManyRequest, actor: Actor): AcknowledgeManyReply;
  shelve(alarm: string, request: ShelveRequest, actor: Actor): Result<SetAsideAlarm, ActionFault>;
  unshelve(alarm: string, request: BringBackRequest, actor: Actor): Result<BroughtBack, ActionFault>;
  takeOutOfService(alarm: string, request: TakeOutOfServiceRequest, actor: Actor): Result<SetAsideAlarm, ActionFault>;
  returnToService(alarm: string, request: BringBackRequest, actor: Actor): Result<BroughtBack, ActionFault>;
  openPermit(request: OpenPermitRequest, actor: Actor): Result<Permit, PermitActionFault>;
  closePermit(permit: string, request: ClosePermitRequest, actor: Actor): Result<Permit, PermitActionFault>;
}

export const LIVE_VIEW = Symbol('LiveView');
export const OPERATIONS = Symbol('Operations');
