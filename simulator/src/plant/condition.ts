import type { PlantParameters } from './plant-parameters';

/**
 * What is worn or broken in a unit and its loop. Shares are of what a whole part gives, 1 is whole. Ageing sets its
 * own copy; faults go on top of it.
 */
export interface Condition {
  // vacuum source
  leadDead: boolean;
  standbyDead: boolean;
  /** Capacity left of each vacuum source. */
  vacuumShare: number;
  /** Seal water above its usual temperature, K. */
  sealWarmerK: number;
  /** Room air back through the check valve of the resting source, m³/s of free air while sonic. */
  standbyCheckFreeM3PerS: number;
  /** Water or foam in the trap before the vacuum source, 0 to 1 of what stops it. */
  trapFilledShare: number;
  /** The separator's set point stands so much too low, Pa. */
  separatorSetLowerPa: number;
  // transfer pump, filter, exchanger, facility valve
  pumpTripped: boolean;
  pumpHeadShare: number;
  /** Filter resistance, on top of the state's own load. */
  filterShare: number;
  /** UA of the exchanger. */
  exchangerShare: number;
  valve: ValveCondition;
  // supply tank
  vent: VentCondition;
  // water in and out, m³/s
  waterLossM3PerS: number;
  /** The loss drips into the unit's own tray; else it runs to the drain unseen. */
  lossInTray: boolean;
  /** Facility water through a pinhole of the exchanger. */
  pinholeM3PerS: number;
  /** Top-up water that nobody ordered. */
  overfillM3PerS: number;
  // power
  powerLost: boolean;
  /** What the supply tank's bleed does without power. */
  bleedFailsShut: boolean;
  // by rack
  /** Resistance of the rack's servers. */
  readonly rackResistance: number[];
  /** Flow through one plate, against its neighbours. */
  readonly plateFlowShare: number[];
  /** Thermal paste of one plate: its fixed resistance. */
  readonly pasteShare: number[];
  /** Effective bore of the cut return hose of a whole rack, m; 0: whole. */
  readonly mainCutBoreM: number[];
}

/** sticky: moves only once it is far off; stuck: stays; shut: runs shut whatever is asked. */
export type ValveCondition = 'good' | 'sticky' | 'stuck' | 'shut';
/** limited: the relief gives a fifth; stuckShut and stuckOpen: stays there, bleed and relief. */
export type VentCondition = 'good' | 'limited' | 'stuckShut' | 'stuckOpen';

export function wholeCondition({ racks }: Pick<PlantParameters, 'racks'>): Condition {
  const each = (value: number): number[] => new Array<number>(racks).fill(value);
  return {
    leadDead: false,
    standbyDead: false,
    vacuumShare: 1,
    sealWarmerK: 0,
    standbyCheckFreeM3PerS: 0,
    trapFilledShare: 0,
    separatorSetLowerPa: 0,
    pumpTripped: false,
    pumpHeadShare: 1,
    filterShare: 1,
    exchangerShare: 1,
    valve: 'good',
    vent: 'good',
    waterLossM3PerS: 0,
    lossInTray: false,
    pinholeM3PerS: 0,
    overfillM3PerS: 0,
    powerLost: false,
    bleedFailsShut: false,
    rackResistance: each(1),
    plateFlowShare: each(1),
    pasteShare: each(1),
    mainCutBoreM: each(0),
  };
}

/** Brings `into` to the values of `from`, its arrays kept. */
export function copyCondition(from: Condition, into: Condition): void {
  const { rackResistance, plateFlowShare, pasteShare, mainCutBoreM } = into;
  Object.assign(into, from, { rackResistance, plateFlowShare, pasteShare, mainCutBoreM });
  for (let r = 0; r < rackResistance.length; r += 1) {
    rackResistance[r] = from.rackResistance[r] ?? 1;
    plateFlowShare[r] = from.plateFlowShare[r] ?? 1;
    pasteShare[r] = from.pasteShare[r] ?? 1;
    mainCutBoreM[r] = from.mainCutBoreM[r] ?? 0;
  }
}
