import type { PlantParameters } from '../plant-parameters';
import type { PlantState } from '../plant-state';
import { emptyM3, fullM3, receiverM3, tankM3 } from './alternating-type';
import type { AlternatingState, TransferCondition } from './alternating-state';
import { separatorGasM3 } from '../separator';

/** Changes the tanks over when the one has run empty or the other full, unless something keeps them from it. */
export function transferWhenDue(
  parameters: PlantParameters,
  state: AlternatingState,
  condition: TransferCondition,
  dtS: number,
): void {
  const { loop } = state;
  const swing = (fullM3 - emptyM3) * condition.swingShare;
  const due = loop.supplyTankWaterM3 <= fullM3 - swing || loop.separatorWaterM3 >= emptyM3 + swing;
  state.strokeS += dtS;
  state.dueS = due ? state.dueS + dtS : 0;
  if (!due || condition.failed || state.dueS <= condition.lateS) return;
  changeOver(parameters, loop);
  state.filling = state.filling === 0 ? 1 : 0;
  state.strokeS = 0;
  state.dueS = 0;
  state.transfers += 1;
}

/**
 * The valves change over within a step: the gas of both tanks equalises first, so that the full one takes much of the
 * emptied one's air and the loop's supply dips by some kPa only; then the emptied one is opened to the receiver.
 */
function changeOver(parameters: PlantParameters, loop: PlantState): void {
  const receiverAndFull = separatorGasM3(parameters, loop);
  const fullGasM3 = Math.max(0.01 * tankM3, receiverAndFull - receiverM3);
  const emptyGasM3 = tankM3 - loop.supplyTankWaterM3;
  const inFullMol = (loop.separatorGasMol * fullGasM3) / receiverAndFull;
  const both = inFullMol + loop.supplyTankGasMol;
  // amounts at one pressure go as volume over absolute temperature
  const full = fullGasM3 / (loop.separatorC + 273.15);
  const empty = emptyGasM3 / (loop.supplyTankC + 273.15);
  loop.separatorGasMol += (both * empty) / (full + empty) - inFullMol;
  loop.supplyTankGasMol = (both * full) / (full + empty);
  swap(loop, 'supplyTankWaterM3', 'separatorWaterM3');
  swap(loop, 'supplyTankC', 'separatorC');
  swap(loop, 'supplyTankDissolvedMol', 'separatorDissolvedMol');
}

type Amount = 'WaterM3' | 'C' | 'DissolvedMol';

function swap<Name extends Amount>(loop: PlantState, one: `supplyTank${Name}`, two: `separator${Name}`): void {
  const kept = loop[one];
  loop[one] = loop[two];
  loop[two] = kept;
}
