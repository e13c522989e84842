import type { Result } from '@ebbline/shared/errors/result';
import type { GuidedAsked, GuidedKind, GuidedRefusal } from '@ebbline/shared/contract/guided-test';
import type { Mode } from '@ebbline/shared/contract/http-api';
import type { PathPlace, PressureWindow } from '@ebbline/shared/contract/live-feed';
import type { SystemState } from '../alarm-rules/system-state';
import type { ExplainedPoint } from '../derive/explain-point';
import type { CompiledSite } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import type { Acceptance } from '../sample/acceptance';
import type { OperatorAction, RawMessage } from './inputs';
import type { ActionOutcome, AlarmRecord, AlarmTransition } from './outputs';
import type { AlertChange, AlertRecord } from './alert-record';
import type { PermitAction, PermitChange, PermitOutcome, PermitRecord } from './permit-record';
import type {
  TightnessAction,
  TightnessChange,
  TightnessOutcome,
  TightnessRecord,
  TightnessRefusal,
} from './tightness-record';
import type { TightnessPlan } from './tightness/refusals';
import type { GuidedAction, GuidedChange, GuidedOutcome, GuidedRecord } from './guided/guided-record';
import type { GuidedNow } from './guided/guided-live';
import type { HandAction, HandOutcome, HandRecord } from './hand-record';
import type { findAlarms } from './set-aside/find-alarms';
import type { HistoryRows } from './history-rows';
import type { HourTrail } from './hour-extremes';
import type { Learnt } from './remembered/memory-image';

/**
 * The whole judge behind one seam: messages, ticks and actions in; transitions and rows out.
 * Pure: no clock, no chance, no I/O. One owner feeds it one input at a time.
 * `createPipeline` in `create-pipeline.ts` builds it.
 */
export interface Pipeline {
  readonly site: CompiledSite;
  readonly state: SlotState;
  /** Decodes, converts, judges and keeps one message. Never throws whatever the bytes are. */
  accept(message: RawMessage, arrivalMs: number, wallMs?: number): Acceptance;
  /**
   * Runs every slice that is due up to `nowMs` (20 slices a second; units hashed to slices): `unitStep`
   * for each unit of the slice, `hallStep` once a second. The returned array is reused by the next call.
   * `system` is what the program has measured of itself; left out, the last one holds.
   */
  advance(nowMs: number, system?: SystemState): readonly AlarmTransition[];
  /**
   * Carries out one operator action. `commit` is asked with what is about to happen; where it says no, nothing
   * has happened (`ACTION_NOT_RECORDED`): an action that is not in the journal has no effect.
   */
  act(
    action: OperatorAction,
    nowMs: number,
    commit?: (transition: AlarmTransition, record: AlarmRecord) => boolean,
  ): ActionOutcome;
  /** Standing alarms (state not normal) that people are told: none that is set aside. */
  standing(): readonly AlarmRecord[];
  /** Alarms that were set aside, standing or not; of those suppressed by design the ones that stand. */
  setAside(): readonly AlarmRecord[];
  /** What the modes of the units have off now and does not stand, one a unit and entry, as it would be set aside. */
  offByMode(): readonly AlarmRecord[];
  /** Alarms that the site can have, standing or not, in whose names every word stands; `most` at the most. */
  findAlarms(words: readonly string[], most: number, nowMs: number): ReturnType<typeof findAlarms>;
  /** Open and overdue permits. */
  permits(): readonly PermitRecord[];
  /** Opens or closes a permit. As with `act`: what `commit` does not take has not happened. */
  actOnPermit(action: PermitAction, nowMs: number, commit?: (change: PermitChange) => boolean): PermitOutcome;
  /** Takes back the open permits that the journal holds, before the first message. */
  restorePermits(records: readonly PermitRecord[]): void;
  /** Permits that went overdue or closed by themselves since this was last asked, for the journal; each is told once. */
  takePermitChanges(): readonly PermitChange[];
  /** Guided pressure-rise tests that are known, newest last; the running ones with what they have found so far. */
  tightnessTests(): readonly TightnessRecord[];
  /** Why a test can't be started at a unit now; empty where it can. */
  tightnessRefusals(unit: number, plan?: TightnessPlan): readonly TightnessRefusal[];
  /** Starts or ends a test. As with `act`: what `commit` does not take has not happened. */
  actOnTightness(
    action: TightnessAction,
    nowMs: number,
    commit?: (change: TightnessChange) => boolean,
  ): TightnessOutcome;
  /** Takes back the tests that the journal holds, before the first message; one that ran ends as interrupted. */
  restoreTightness(records: readonly TightnessRecord[]): void;
  /** Tests that ended by themselves since this was last asked, for the journal; each is told once. */
  takeTightnessChanges(): readonly TightnessChange[];
  /** Guided tests that are known, newest last. */
  guidedTests(): readonly GuidedRecord[];
  /** How an open test stands now. */
  guidedNow(record: GuidedRecord, nowMs: number): GuidedNow;
  /** Why a test of a kind can't begin at a unit now; empty where it can. */
  guidedRefusals(unit: number, kind: GuidedKind): readonly GuidedRefusal[];
  /** The steps that such a test would have behind its cautions, by what the unit has. */
  guidedAsks(unit: number, kind: GuidedKind): readonly GuidedAsked[];
  guidedSteps(
    unit: number,
    kind: GuidedKind,
  ): readonly { readonly id: string; readonly title: string; readonly text: string }[];
  /** Starts a test, confirms a step of one, or cancels it. As with `act`: what `commit` does not take has not happened. */
  actOnGuided(action: GuidedAction, nowMs: number, commit?: (change: GuidedChange) => boolean): GuidedOutcome;
  /** Takes back the tests that the journal holds, before the first message; one that was open ends as interrupted. */
  restoreGuided(records: readonly GuidedRecord[]): void;
  /** What tests did by themselves since this was last asked, for the journal; each is told once. */
  takeGuidedChanges(): readonly GuidedChange[];
  /** Tick time since which it watches, ms; NaN before it does. */
  startedMs(): number;
  /** What people typed at a unit, newest sample first, corrected entries among them. */
  handEntries(unit: string): readonly HandRecord[];
  /** The entry in the place of a corrected one; null where it is in force. */
  handCorrector(entry: string): string | null;
  /** Takes in a typed value or a correction. As with `act`: what `commit` does not take has not happened. */
  actOnHand(action: HandAction, nowMs: number, commit?: (record: HandRecord) => boolean): HandOutcome;
  /** Takes back what the journal holds, before the first message. */
  restoreHand(records: readonly HandRecord[], nowMs: number): void;
  /** Alerts that stand. */
  alerts(): readonly AlertRecord[];
  /** How alerts came and went since this was last asked, for the journal; each is told once. */
  takeAlertChanges(): readonly AlertChange[];
  /** What is known now of a standing alarm's very case; null where there is nothing to say. */
  detailOf(alarm: string): string | null;
  /** Takes back the alerts that the journal holds, before the first message and after the alarms: they came before, and come no second time. */
  restoreAlerts(records: readonly AlertRecord[]): void;
  /**
   * Takes back what the journal holds, before the first message. `reachedMs`: tick time of its newest row, ms; where the time in force
   * turns out to lie before it, the clock was set back meanwhile.
   */
  restore(records: readonly AlarmRecord[], reachedMs?: number): void;
  /** What it has learnt, for a file: means of a day, usual values, what its rules remember. */
  learnt(nowMs: number): Learnt;
  /** Takes back what `learnt` gave before a restart, before the first message; used as far as it fits, with the first step. */
  recall(learnt: Learnt): Result<null>;
  /** Rows for history that are complete by now (or all, on `everything`); see `HistoryRows`. */
  drainHistory(nowMs: number, everything: boolean): HistoryRows | null;
  modeOf(unit: number): { readonly mode: Mode; readonly known: boolean };
  /** Pictures for the screens; computed when asked, from the slots. */
  pressureWindow(unit: number, nowMs: number): PressureWindow;
  /** Lowest and highest wetted pressure of the last hour, minute by minute. */
  hourTrail(unit: number, nowMs: number): HourTrail;
  path(unit: number): readonly PathPlace[];
  /** What stands behind the value of a slot of the unit or of its hall; worked out when asked, and changes nothing. */
  explain(unit: number, slot: number): ExplainedPoint;
}
