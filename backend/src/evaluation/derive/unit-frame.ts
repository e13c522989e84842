import {
  celsius,
  cubicMetrePerSecond,
  kilogramPerCubicMetre,
  pascalAbsolute,
  type Celsius,
  type CubicMetrePerSecond,
  type KilogramPerCubicMetre,
  type PascalAbsolute,
} from '@ebbline/shared/units/quantity';
import type { CompiledSite } from '../site/compiled-site';
import { createSlotState, type SlotState } from '../slots/slot-state';
import { readAmbient, type Ambient } from './ambient';
import { emptyExchanger } from './exchanger-state';
import { unknownGas } from './gas-flow';
import { InputTally } from './input-tally';
import type { DeriveMemory } from './memory/derive-memory';
import type { UncertaintyBudget } from './uncertainty-budget';
import { MainColumn } from './main-column';
import type { TransitSample } from './memory/transit';
import { NodePressures } from './node-pressures';
import { TransitNow } from './transit-now';
import { unitPlan, type UnitPlan } from './unit-plan';

/** Points that a unit has, as functions of its frame, and the slots of those that it can't have. */
export interface DeriveWork {
  readonly derive: readonly ((frame: UnitFrame) => void)[];
  readonly absent: readonly number[];
}

/**
 * What the derived points of one unit share within one step, read once. NaN where an input is bad; each point
 * still takes its inputs through the tally, which keeps quality and age. Filled anew for every unit.
 */
export class UnitFrame {
  readonly tally = new InputTally();
  readonly ambient: Ambient = { pressure: pascalAbsolute(Number.NaN), u: Number.NaN, reasons: 0, sourceMs: Number.NaN };
  state: SlotState = createSlotState(0);
  /** What is worked out each second, planned on the first. */
  work: DeriveWork | null = null;
  /** The values that `memory` belongs to, and in which points that this unit can't have were told so already. */
  startedState: SlotState | null = null;
  nowMs = Number.NaN;
  stopped = false;
  /** Where the parts of an uncertainty are written while somebody asks for one; null each second. */
  budget: UncertaintyBudget | null = null;
  /** Σ u_i⁴/ν_i of what the next value rests on (`few-observations.ts`); 0 between values. */
  scatter = 0;
  /** What is remembered between seconds; null where nobody keeps it, and then what needs it is not known. */
  memory: DeriveMemory | null = null;
  /** Seconds since the memory last took a sample of this unit; 0 where it has this one already. */
  elapsedS = 0;
  supplyTemperature: Celsius = celsius(Number.NaN);
  returnTemperature: Celsius = celsius(Number.NaN);
  supplyDensity: KilogramPerCubicMetre = kilogramPerCubicMetre(Number.NaN);
  returnDensity: KilogramPerCubicMetre = kilogramPerCubicMetre(Number.NaN);
  flow: CubicMetrePerSecond = cubicMetrePerSecond(Number.NaN);
  supplyAnchorPressure: PascalAbsolute = pascalAbsolute(Number.NaN);
  returnAnchorPressure: PascalAbsolute = pascalAbsolute(Number.NaN);
  separatorPressure: PascalAbsolute = pascalAbsolute(Number.NaN);
  readonly supplyColumn = new MainColumn('supply');
  readonly returnColumn = new MainColumn('return');
  /** Pressure of every wetted node, once a second. */
  readonly nodes: NodePressures;
  /** What the water that returns now met on its way. */
  readonly transit = new TransitNow();
  readonly transitSample: TransitSample = {
    flowM3PerS: Number.NaN,
    supplyC: Number.NaN,
    returnC: Number.NaN,
    heatW: Number.NaN,
  };
  /** Gas that the vacuum source takes away now, and all that comes in; with what both rest on. */
  readonly gasRemoved = unknownGas();
  readonly gasComing = unknownGas();
  readonly gasTally = new InputTally();
  readonly exchanger = emptyExchanger();
  readonly exchangerTally = new InputTally();
  exchangerKnown = false;
  /** Whether this second is the unit's turn for what changes slowly: once in ten. */
  watchTurn = true;

  constructor(
    readonly site: CompiledSite,
    readonly plan: UnitPlan,
  ) {
    this.nodes = new NodePressures(plan.nodes);
  }

  read(state: SlotState, nowMs: number, stopped: boolean): void {
    const { tally, plan } = this;
    const { slot } = plan;
    this.state = state;
    this.nowMs = nowMs;
    this.stopped = stopped;
    this.exchangerKnown = false;
    readAmbient(this.site, state, plan.ambientSlot, this.ambient);
    this.supplyTemperature = celsius(tally.take(state, slot['supply.temperature']));
    this.returnTemperature = celsius(tally.take(state, slot['return.temperature']));
    this.supplyDensity = plan.fluid.density(this.supplyTemperature);
    this.returnDensity = plan.fluid.density(this.returnTemperature);
    this.flow = cubicMetrePerSecond(tally.take(state, slot['loop.flow']));
    this.supplyAnchorPressure = pascalAbsolute(tally.take(state, plan.supplyAnchor?.slot ?? -1));
    this.returnAnchorPressure = pascalAbsolute(tally.take(state, plan.returnAnchor?.slot ?? -1));
    this.separatorPressure = pascalAbsolute(tally.take(state, slot['separator.pressure']));
    this.supplyColumn.read(this);
    this.returnColumn.read(this);
    this.nodes.read(this);
    tally.begin();
  }
}

const framesOfSite = new WeakMap<CompiledSite, (UnitFrame | undefined)[]>();

/** The frame of a unit, read anew from the slots. One object a unit, used again each second. */
export function readUnitFrame(
  site: CompiledSite,
  state: SlotState,
  unitIndex: number,
  nowMs: number,
  stopped: boolean,
): UnitFrame {
  let frames = framesOfSite.get(site);
  if (frames === undefined) {
    frames = [];
    framesOfSite.set(site, frames);
  }
  const frame = (frames[unitIndex] ??= new UnitFrame(site, unitPlan(site, unitIndex)));
  frame.read(state, nowMs, stopped);
  return frame;
}
