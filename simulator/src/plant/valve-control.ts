import type { PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';

/** Lag of the controller's own temperature sensor, s. */
const sensorLagS = 8;
/** Of full stroke per kelvin, and the time of the integral, s. */
const gainPerK = 0.06;
const integralS = 60;

/** Facility valve: a proportional and integral controller on the supply temperature, and an actuator of limited speed. */
export function stepValve(parameters: PlantParameters, state: PlantState, dtS: number): void {
  state.controlledC += ((state.supplyTankC - state.controlledC) * dtS) / (sensorLagS + dtS);
  const warmK = state.controlledC - parameters.set.supplyC;
  const wanted = gainPerK * warmK + state.valveIntegral;
  state.valveCommand = Math.min(1, Math.max(0, wanted));
  const pushing = (wanted > 1 && warmK > 0) || (wanted < 0 && warmK < 0);
  if (!pushing) state.valveIntegral += (gainPerK * warmK * dtS) / integralS;
  const reach = dtS / parameters.exchanger.valveStrokeS;
  const way = state.valveCommand - state.valvePosition;
  state.valvePosition += Math.min(reach, Math.max(-reach, way));
}
