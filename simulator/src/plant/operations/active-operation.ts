import type { PlantInputs } from '../plant-inputs';
import type { PlantParameters } from '../plant-parameters';
import type { PlantState } from '../plant-state';
import type { OperationOrder } from './operation';
import { operationTable } from './operation-table';

/** Work that is under way. Times in seconds of the plant. */
export interface ActiveOperation {
  readonly order: OperationOrder;
  readonly sinceS: number;
  readonly meterM3: number;
}

export function beginOperation(order: OperationOrder, state: PlantState, nowS: number): ActiveOperation {
  return { order, sinceS: nowS, meterM3: state.topUpM3 };
}

/** One second of every operation under way, before the plant's steps; those that are done leave the list. */
export function applyOperations(
  list: ActiveOperation[],
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  nowS: number,
): void {
  for (let i = 0; i < list.length; i += 1) {
    const { order, sinceS, meterM3 } = list[i] as ActiveOperation;
    const site = { parameters, state, inputs, order, sinceS: nowS - sinceS, meterM3 };
    if (!operationTable[order.operation].step(site)) continue;
    list.splice(i, 1);
    i -= 1;
  }
}
