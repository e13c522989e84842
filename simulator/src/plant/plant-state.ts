/**
 * The whole state of one unit and its loop: everything that is remembered from step to step.
 * Volumes in m³ of water, amounts of dry gas in mol, temperatures in °C, the rest as named.
 */
export interface PlantState {
  /** Seconds since the state was made. */
  timeS: number;
  // tanks
  supplyTankWaterM3: number;
  supplyTankC: number;
  supplyTankGasMol: number;
  separatorWaterM3: number;
  separatorC: number;
  separatorGasMol: number;
  /** Air dissolved in the water of each tank, mol. */
  supplyTankDissolvedMol: number;
  separatorDissolvedMol: number;
  // water on its way: temperature of each cell, in the direction of flow
  readonly supplyMainC: Float64Array;
  readonly returnMainC: Float64Array;
  /** Dissolved salts of the whole loop, as conductivity times volume, S/m · m³. */
  saltsSM2: number;
  /** Water in the unit's own drip tray. */
  trayM3: number;
  /** Top-up water that the meter has counted. */
  topUpM3: number;
  /** Gas in each cell of the return main. */
  readonly returnMainGasMol: Float64Array;
  readonly returnMainGasM3: Float64Array;
  /** Pump to exchanger, and the exchanger's two sides. */
  pumpLineC: number;
  exchangerHotC: number;
  exchangerColdC: number;
  readonly racks: RackState[];
  // transfer pump, filter, valve, vacuum source
  pumpSpeed: number;
  levelIntegral: number;
  /** Filter resistance against clean. */
  filterLoad: number;
  valvePosition: number;
  valveCommand: number;
  valveIntegral: number;
  /** Supply temperature as the controller's sensor gives it. */
  controlledC: number;
  vacuumRunning: boolean;
  vacuumSpeed: number;
  vacuumIntegral: number;
  /** Separator pressure above its set point at the last step, Pa: finds the moment of a switch inside a step. */
  separatorErrorPa: number;
  standbySpeed: number;
  standbyAboveS: number;
  standbyRanS: number;
  standbyRunning: boolean;
  /** Stop valve below the supply tank, 0 shut to 1 open. */
  loopValve: number;
  /** The supply tank is filled up before the loop opens. */
  refilling: boolean;
  /** So long after power came back the unit still says that it returns, s of full flow; 0: it does not. */
  returningS: number;
  /** Bleed or relief of the supply tank, 0 to 1 of what it can pass: wanted, and as it stands. */
  ventCommand: number;
  ventPosition: number;
  /** What the last step found; the next one starts its search there, and readings are taken from it. */
  readonly last: LastStep;
  /** Sums since the state was made, for balances. */
  readonly sums: Sums;
}

export interface RackState {
  /** Water from the rack's hose to the plates. */
  inletC: number;
  /** Water from the plates to the return main. */
  outletC: number;
  /** Gas in the supply manifold and in the return manifold. */
  supplyGasMol: number;
  supplyGasM3: number;
  returnGasMol: number;
  returnGasM3: number;
  /** Chips of the servers that stay whole; chips of the server whose hose a fault may open; one chip of that server, whose plate a fault may block. */
  chipC: number;
  probeChipC: number;
  plateChipC: number;
  fanWPerK: number;
  probeFanWPerK: number;
  plateFanWPerK: number;
  /** Heat into the water and water flow of one whole server and of the one with the probe chips. */
  serverWaterW: number;
  probeWaterW: number;
  serverFlowM3PerS: number;
  probeFlowM3PerS: number;
  /** The heater's trip has fallen; it stays so until the load is taken off. */
  tripped: boolean;
  flowM3PerS: number;
  supplyManifoldPa: number;
  returnManifoldPa: number;
  /** Gas through the rack's return hose, m³/s at its mean pressure. */
  returnGasM3PerS: number;
  chipHeatW: number;
  /** Water that a valved-off rack has pressed out; it is filled up again when the valves open. */
  shortM3: number;
  /** Water that lies below the rack and has not dried. */
  wetM3: number;
}

export interface LastStep {
  supplyTankPa: number;
  separatorPa: number;
  loopFlowM3PerS: number;
  returnMainLossPa: number;
  returnMainGasM3PerS: number;
  transferM3PerS: number;
  pumpInletPa: number;
  suctionHeadM: number;
  facilityKgPerS: number;
  exchangerW: number;
  exhaustMolPerS: number;
  chipHeatW: number;
  /** Water over the top of a full separator into the vacuum line, m³/s. */
  carriedOverM3PerS: number;
  /** Room air by the vacuum source's bleed, m³/s of free air. */
  vacuumBleedM3PerS: number;
}

export interface Sums {
  chipHeatJ: number;
  pumpHeatJ: number;
  facilityHeatJ: number;
  hallHeatJ: number;
  exhaustHeatJ: number;
  waterOutM3: number;
  waterInM3: number;
  /** Heat of water that came in less that of water that went out, the exhaust's apart; counted from 0 °C. */
  waterHeatJ: number;
  gasInMol: number;
  gasOutMol: number;
}

export const mainCells = 6;
