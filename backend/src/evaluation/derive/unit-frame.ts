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
import { columnDensity } from './column-density';
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

/**
 * What the derived points of one unit share within one step, read once. NaN where an input is bad; each point
 * still takes its inputs through the tally, which keeps quality and age. Filled anew for every unit: one frame serves a whole
 * site, since a frame of each unit's own would have to be fetched from main memory every second.
 */
export class UnitFrame {
  readonly tally = new InputTally();
  readonly ambient: Ambient = { pressure: pascalAbsolute(Number.NaN), u: Number.NaN, reasons: 0, sourceMs: Number.NaN };
  state: SlotState = createSlotState(0);
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
  /** The same for the weight of standing water, which is known beyond the range of its source too. */
  supplyColumnDensity: KilogramPerCubicMetre = kilogramPerCubicMetre(Number.NaN);
  returnColumnDensity: KilogramPerCubicMetre = kilogramPerCubicMetre(Number.NaN);
  flow: CubicMetrePerSecond = cubicMetrePerSecond(Number.NaN);
  supplyAnchorPressure: PascalAbsolute = pascalAbsolute(Number.NaN);
  returnAnchorPressure: PascalAbsolute = pascalAbsolute(Number.NaN);
  separatorPressure: PascalAbsolute = pascalAbsolute(Number.NaN);
  readonly supplyColumn = new MainColumn('supply');
  readonly returnColumn = new MainColumn('return');
  /** Pressure of every wetted node, once a second. */
  nodes: NodePressures;
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
  /** Boiling at the nearest wetted node, worked out for the first who asks. */
  readonly nodeWall = { margin: Number.NaN, u: Number.NaN, place: -1 };
  nodeWallKnown = false;
  /** Whether this second is the unit's turn for what changes slowly: once in ten. */
  watchTurn = true;

  constructor(
    readonly site: CompiledSite,
    public plan: UnitPlan,
  ) {
    this.nodes = new NodePressures(plan.nodes.count);
  }

  /** From here on the frame is that of another unit, once it is read. */
  turnTo(plan: UnitPlan): void {
    this.plan = plan;
    if (plan.nodes.count > this.nodes.capacity) this.nodes = new NodePressures(plan.nodes.count);
  }

  read(state: SlotState, nowMs: number, stopped: boolean): void {
    const { tally, plan } = this;
    const { slot } = plan;
    this.state = state;
    this.nowMs = nowMs;
    this.stopped = stopped;
    this.exchangerKnown = false;
    this.nodeWallKnown = false;
    readAmbient(this.site, state, plan.ambientSlot, this.ambient);
    this.supplyTemperature = celsius(tally.take(state, slot['supply.temperature']));
    this.returnTemperature = celsius(tally.take(state, slot['return.temperature']));
    this.supplyDensity = plan.fluid.density(this.supplyTemperature);
    this.returnDensity = plan.fluid.density(this.returnTemperature);
    this.supplyColumnDensity = columnDensity(plan.fluid, this.supplyTemperature, this.supplyDensity);
    this.returnColumnDensity = columnDensity(plan.fluid, this.returnTemperature, this.returnDensity);
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

const frameOfSite = new WeakMap<CompiledSite, UnitFrame>();

/** The site's frame, turned to a unit and read anew from the slots: it holds until the next one is read. */
export function readUnitFrame(
  site: CompiledSite,
  state: SlotState,
  unitIndex: number,
  nowMs: number,
  stopped: boolean,
): UnitFrame {
  const plan = unitPlan(site, unitIndex);
  let frame = frameOfSite.get(site);
  if (frame === undefined) {
    frame = new UnitFrame(site, plan);
    frameOfSite.set(site, frame);
  }
  frame.turnTo(plan);
  frame.read(state, nowMs, stopped);
  return frame;
}
