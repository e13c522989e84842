import { AlarmBook } from '../alarm-lifecycle/alarm-book';
import type { AlarmTransition } from '../alarm-lifecycle/alarm-record';
import { createAirMemory, type AirMemory } from '../alarm-rules/air-step/air-memory';
import { comparedSensors } from '../alarm-rules/catalogue/ins-2';
import { createDelayState, type DelayState } from '../alarm-rules/delays';
import { FollowMemory } from '../alarm-rules/follow-memory';
import { OpenPermits } from '../alarm-rules/open-permits';
import { createPlantMemory, type PlantMemory } from '../alarm-rules/plant-signs/plant-memory';
import type { ResolvedLimits } from '../alarm-rules/resolve-limits';
import { createRiseMemory, type RiseMemory } from '../alarm-rules/rise-rate';
import { RuleMemory } from '../alarm-rules/rule-memory';
import { createHallMeans, createUnitMeans, type HallMeans, type UnitMeans } from '../alarm-rules/slow-means';
import type { SystemState } from '../alarm-rules/system-state';
import { compileUnitSlots, type UnitSlots } from '../alarm-rules/unit-slots';
import { createIntakeContext, type ClockKind, type IntakeContext } from '../sample/intake-context';
import type { CompiledSite } from '../site/compiled-site';
import { createSlotState, type SlotState } from '../slots/slot-state';
import { AlarmIndex } from './alarm-index';
import { applicable } from './applicable';
import type { AlertChange, StandingAlert } from './alert-record';
import type { PermitChange, PermitRecord } from './permit-record';
import { HandBook } from './hand/hand-book';
import { HistoryBuilder } from './history-builder';
import { GuidedTests } from './guided/guided-tests';
import { TightnessTests } from './tightness/tightness-tests';
import { HourExtremes } from './hour-extremes';
import { limitsOfUnit } from './limits-of-unit';
import type { ModeFound } from './mode-of-unit';
import { modeOfUnit } from './mode-of-unit';

/** All that is remembered between steps, columns wherever it is hot. Owned by one pipeline, written in place. */
export interface PipelineState {
  readonly site: CompiledSite;
  readonly state: SlotState;
  readonly index: AlarmIndex;
  readonly book: AlarmBook;
  readonly delays: DelayState;
  readonly unitSlots: readonly UnitSlots[];
  /** By unit, in the order of `unitEntries`. */
  readonly limits: readonly (readonly ResolvedLimits[])[];
  readonly modes: ModeFound[];
  /** Tick time since which each unit is in its mode; NaN before its first step. */
  readonly modeSinceMs: Float64Array;
  readonly air: AirMemory;
  readonly supplyRise: RiseMemory;
  readonly facilityRise: RiseMemory;
  /** Tick time of the last step of loops and halls; NaN before the first. */
  groupSteppedMs: number;
  /** Tick time that this program, or the one before it, is known to have reached; NaN where nothing is known. */
  reachedMs: number;
  /** Tick time of each unit's last step; NaN before the first. */
  readonly steppedMs: Float64Array;
  /** Gateway of each slot, −1 where it has none. */
  readonly gatewayOfSlot: Int32Array;
  /** When anything was last taken from a gateway, tick time; NaN before the first. */
  readonly gatewayHeardMs: Float64Array;
  /** Since when the gateway's status (or its last will) says that it is gone; NaN where it does not. */
  readonly gatewayGoneMs: Float64Array;
  readonly intake: IntakeContext;
  readonly history: HistoryBuilder;
  readonly hour: HourExtremes;
  /** Tick time of the first slice: from here the start grace counts. NaN before it. */
  startedMs: number;
  /** Tick times from which this program last stood still, and at which it went on; NaN where it never did. */
  stoodFromMs: number;
  resumedMs: number;
  /** Open and overdue permits, by id; what they allow; and what became of them by itself, to be taken. */
  readonly permits: Map<string, PermitRecord>;
  readonly openPermits: OpenPermits;
  readonly permitChanges: PermitChange[];
  /** Guided pressure-rise tests: running, ended, and what became of them by itself, to be taken. */
  readonly tightness: TightnessTests;
  /** Guided tests of all other kinds, the same of them. */
  readonly guided: GuidedTests;
  /** What people typed. */
  readonly hand: HandBook;
  /** Alerts that stand, by alarm; and how they came and went, to be taken. */
  readonly alerts: Map<number, StandingAlert>;
  readonly alertChanges: AlertChange[];
  readonly memory: RuleMemory;
  readonly plant: PlantMemory;
  /** The alarm that stands for all of its entry in a hall, by hall and entry. */
  readonly hallFirstOut: Map<number, number>;
  /** What halls and units stood at in the last hours: tells weather and humid air from what is a unit's own. */
  readonly hallMeans: HallMeans;
  readonly unitMeans: UnitMeans;
  readonly follow: FollowMemory;
  /** 1 = the alarm can be judged where it is; 0 = its unit lacks what is needed, so there is no such alarm. */
  readonly applies: Uint8Array;
  /** Places of the entries that each unit has, in order. */
  readonly unitPlaces: readonly Uint8Array[];
  /** What the program last told of itself; null before that. */
  system: SystemState | null;
  /** Ends of alarms that the site no longer has; told with the first `advance`. */
  readonly left: AlarmTransition[];
  /** What the running `advance` has found so far. */
  readonly transitions: AlarmTransition[];
}

export function createPipelineState(site: CompiledSite, clock: ClockKind): PipelineState {
  const state = createSlotState(site.slots.count);
  const index = new AlarmIndex(site);
  const unitSlots = site.units.map((unit) => {
    const holder = site.holders[unit.holder];
    return compileUnitSlots(holder ?? emptyHolder, unit);
  });
  return {
    site,
    state,
    index,
    book: new AlarmBook(),
    delays: createDelayState(index.count),
    unitSlots,
    limits: site.units.map(limitsOfUnit),
    modes: unitSlots.map((slots) => modeOfUnit(state, slots)),
    modeSinceMs: new Float64Array(site.units.length).fill(Number.NaN),
    air: createAirMemory(site.units),
    supplyRise: createRiseMemory(site.units.length),
    facilityRise: createRiseMemory(site.units.length),
    steppedMs: new Float64Array(site.units.length).fill(Number.NaN),
    gatewayOfSlot: gatewayOfSlot(site),
    gatewayHeardMs: new Float64Array(site.gateways.length).fill(Number.NaN),
    gatewayGoneMs: new Float64Array(site.gateways.length).fill(Number.NaN),
    intake: createIntakeContext(site, state, clock),
    history: new HistoryBuilder(site),
    hour: new HourExtremes(site.units.length),
    startedMs: Number.NaN,
    stoodFromMs: Number.NaN,
    resumedMs: Number.NaN,
    groupSteppedMs: Number.NaN,
    reachedMs: Number.NaN,
    permits: new Map(),
    openPermits: new OpenPermits(site.units.length),
    permitChanges: [],
    tightness: new TightnessTests(),
    guided: new GuidedTests(),
    hand: new HandBook(),
    alerts: new Map(),
    alertChanges: [],
    memory: new RuleMemory(index.count),
    plant: createPlantMemory(site.units.length),
    hallFirstOut: new Map(),
    hallMeans: createHallMeans(site.halls.length),
    unitMeans: createUnitMeans(site.units.length),
    follow: new FollowMemory(site.units.length * comparedSensors.length),
    ...applicable(site, index, unitSlots),
    system: null,
    left: [],
    transitions: [],
  };
}

const emptyHolder = { id: '', kind: 'unit', firstSlot: 0, slotCount: 0, slotOf: new Map(), places: [] } as const;

function gatewayOfSlot(site: CompiledSite): Int32Array {
  const gateways = new Int32Array(site.slots.count).fill(-1);
  site.gateways.forEach((gateway, place) => {
    for (const slot of gateway.slots) gateways[slot] = place;
  });
  return gateways;
}
