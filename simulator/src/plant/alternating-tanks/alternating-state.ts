import { ratedHeatW, ratedState } from '../initial-state';
import type { PlantParameters } from '../plant-parameters';
import type { PlantState } from '../plant-state';
import { waterHeatJPerM3K } from '../water';

/** Two tanks and the loop between them. */
export interface AlternatingState {
  /** The loop with its tanks by what they do: "supply tank" discharges, "separator" fills. */
  readonly loop: PlantState;
  /** Which of the two tanks fills. */
  filling: 0 | 1;
  /** Since the last transfer. */
  strokeS: number;
  /** How long the transfer has been due. */
  dueS: number;
  transfers: number;
}

/** What keeps the tanks from changing over as they should. */
export interface TransferCondition {
  /** The valves wait so long after the level switch has spoken. */
  lateS: number;
  /** The valves do not move at all. */
  failed: boolean;
  /** Share of the usual swing after which the level switch speaks. */
  swingShare: number;
}

export const soundTransfer = (): TransferCondition => ({ lateS: 0, failed: false, swingShare: 1 });

/** One tank full and discharging, the other emptied and filling; the tanks hold return water, as the exchanger comes after them. */
export function alternatingState(parameters: PlantParameters): AlternatingState {
  const loop = ratedState(parameters);
  const warmK = ratedHeatW(parameters) / (parameters.ratedFlowM3PerS * waterHeatJPerM3K);
  loop.supplyTankC = parameters.set.supplyC + warmK;
  loop.pumpSpeed = 0;
  loop.last.transferM3PerS = 0;
  return { loop, filling: 1, strokeS: 0, dueS: 0, transfers: 0 };
}
