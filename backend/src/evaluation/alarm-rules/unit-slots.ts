import type { CompiledUnit, Holder } from '../site/compiled-site';

/** The slots of a unit that rules and mode read; −1 where the site has no such point. */
export interface UnitSlots {
  readonly vacuumMargin: number;
  readonly vacuumMarginWorst: number;
  readonly lowerWallMargin: number;
  readonly dewPointMargin: number;
  readonly gasLoad: number;
  readonly chipPower: number;
  readonly loopFlow: number;
  readonly supplyTemperature: number;
  readonly returnTemperature: number;
  readonly waterFound: number;
  readonly vacuumSpeed: number;
  readonly vacuumRunning: number;
  readonly pumpRunning: number;
  readonly separatorPressure: number;
  readonly separatorLevel: number;
  readonly supplyTankLevel: number;
  readonly mode: number;
  readonly branchFlow: Int32Array;
  readonly branchReturnPressure: Int32Array;
}

export function compileUnitSlots(holder: Holder, unit: CompiledUnit): UnitSlots {
  const slot = (point: string): number => holder.slotOf.get(point) ?? -1;
  return {
    vacuumMargin: slot('vacuumMargin'),
    vacuumMarginWorst: slot('vacuumMarginWorst'),
    lowerWallMargin: slot('lowerWallMargin'),
    dewPointMargin: slot('dewPointMargin'),
    gasLoad: slot('gasLoad'),
    chipPower: slot('chipPower'),
    loopFlow: slot('loop.flow'),
    supplyTemperature: slot('supply.temperature'),
    returnTemperature: slot('return.temperature'),
    waterFound: slot('water.found'),
    vacuumSpeed: slot('vacuum.speed'),
    vacuumRunning: slot('vacuum.running'),
    pumpRunning: slot('pump.running'),
    separatorPressure: slot('separator.pressure'),
    separatorLevel: slot('separator.level'),
    supplyTankLevel: slot('supplyTank.level'),
    mode: slot('mode'),
    branchFlow: Int32Array.from(unit.branches, (branch) => branch.slot.flow),
    branchReturnPressure: Int32Array.from(unit.branches, (branch) => branch.slot.returnPressure),
  };
}
