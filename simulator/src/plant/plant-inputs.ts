import { wholeCondition, type Condition } from './condition';
import type { HoseOpening } from './hose-opening';
import { runningOrders, type Orders } from './orders';
import type { PlantParameters } from './plant-parameters';

/** Everything from outside that moves the plant: surroundings, work, orders, and what faults have done to it. */
export interface PlantInputs {
  ambientPa: number;
  hallC: number;
  facilitySupplyC: number;
  /** Share of the usual facility flow that the building gives, 0 to 1. */
  facilityFlowShare: number;
  /** Chip power as a share of rated, by rack. */
  loadShare: number[];
  /** Air into the receiver beside the usual tightness, m³/s of free air while sonic. */
  inLeakFreeM3PerS: number;
  /** By rack; null: closed. What a fault opened; a permit's opening stands in the orders. */
  opening: (HoseOpening | null)[];
  /** Ageing: where the parts stand without a fault. */
  readonly aged: Condition;
  /** Where they stand now: ageing with the active faults on top. The plant reads this one. */
  readonly condition: Condition;
  readonly orders: Orders;
  readonly measuredOffset: MeasuredOffset;
}

/** What the controllers' own sensors read above the truth: a drift there moves the plant, not the reading. */
export interface MeasuredOffset {
  separatorPa: number;
  supplyTankPa: number;
  supplyC: number;
  supplyLevelM: number;
}

/** Rated load, usual surroundings, running, nothing broken. */
export function ratedInputs(parameters: PlantParameters): PlantInputs {
  return {
    ambientPa: 101300,
    hallC: 27,
    facilitySupplyC: parameters.exchanger.facilitySupplyC,
    facilityFlowShare: 1,
    loadShare: new Array<number>(parameters.racks).fill(1),
    inLeakFreeM3PerS: 0,
    opening: new Array<HoseOpening | null>(parameters.racks).fill(null),
    aged: wholeCondition(parameters),
    condition: wholeCondition(parameters),
    orders: runningOrders(parameters),
    measuredOffset: { separatorPa: 0, supplyTankPa: 0, supplyC: 0, supplyLevelM: 0 },
  };
}

/** A hose of the rack that is open, by fault or by permit. */
export function openHose(inputs: PlantInputs, rack: number): HoseOpening | null {
  return inputs.opening[rack] ?? inputs.orders.openedHose[rack] ?? null;
}
