import { ratedState } from '../initial-state';
import type { PlantParameters } from '../plant-parameters';
import type { PlantState } from '../plant-state';
import { sharedRacksType } from './shared-loop-type';

/** Units joined at a supply and a return header, with the racks between the headers. */
export interface SharedLoopState {
  readonly units: PlantState[];
  /** Carries the racks; its tanks and mains are empty. */
  readonly racks: PlantState;
  /** Pressures of the headers counted at the height of the return inlets, Pa. */
  supplyHeaderPa: number;
  returnHeaderPa: number;
}

/** Water of each unit in a step, m³/s. Supply may be below zero: back through a leaking check valve. */
export interface SharedFlows {
  readonly supply: number[];
  readonly return: number[];
}

/** What is wrong at a unit's end of the header. */
export interface HeaderCondition {
  /** What the check valve in its supply lets back, as a share of what the main carries forward. */
  checkValveLeakShare: number;
}

export const soundHeader = (): HeaderCondition => ({ checkValveLeakShare: 0 });

export function sharedLoopState(units: readonly PlantParameters[]): SharedLoopState {
  const racks = ratedState(sharedRacksType);
  for (const name of ['supplyTankWaterM3', 'separatorWaterM3', 'supplyTankGasMol', 'separatorGasMol'] as const) {
    racks[name] = 0;
  }
  racks.supplyTankDissolvedMol = 0;
  racks.separatorDissolvedMol = 0;
  return {
    units: units.map((unit) => ratedState(unit)),
    racks,
    supplyHeaderPa: racks.last.supplyTankPa,
    returnHeaderPa: racks.last.separatorPa,
  };
}
