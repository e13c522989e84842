import type { PlantInputs } from './plant-inputs';

/** The ambient pressure at which a gauge set point is the stated absolute pressure, Pa. */
const referenceAmbientPa = 101300;

/** Set point of the separator in force, Pa absolute. */
export function separatorSetPa(inputs: PlantInputs): number {
  return inputs.orders.separatorSetPa - inputs.condition.separatorSetLowerPa + weatherPa(inputs);
}

/** Set point of the supply tank in force, Pa absolute. A vented unit stands at ambient pressure. */
export function supplyTankSetPa(inputs: PlantInputs): number {
  return inputs.orders.vented ? inputs.ambientPa : inputs.orders.supplyTankSetPa + weatherPa(inputs);
}

function weatherPa({ orders, ambientPa }: PlantInputs): number {
  return orders.pressureReference === 'gauge' ? ambientPa - referenceAmbientPa : 0;
}
