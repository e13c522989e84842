import type { PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';

/** Lag of the controller's own temperature sensor, s. */
const sensorLagS = 8;
/** Of full stroke per kelvin, and the time of the integral, s. */
const gainPerK = 0.06;
const integralS = 60;

/** A sticky actuator moves only once it stands so far off, of full stroke. */
const stickyShare = 0.1;

/** Facility valve: a proportional and integral controller on the supply temperature, and an actuator of limited speed. */
export function stepValve(parameters: PlantParameters, state: PlantState, inputs: PlantInputs, dtS: number): void {
  const { orders, condition, measuredOffset } = inputs;
  const sensedC = state.supplyTankC + measuredOffset.supplyC;
  state.controlledC += ((sensedC - state.controlledC) * dtS) / (sensorLagS + dtS);
  // without power the command and the actuator stay
  if (condition.powerLost) return;
  if (orders.facilityOpen && orders.valveByHand === null) controlValve(state, orders.supplySetC, dtS);
  else state.valveCommand = orders.facilityOpen ? (orders.valveByHand ?? 0) : 0;
  if (condition.valve === 'stuck') return;
  const reach = dtS / parameters.exchanger.valveStrokeS;
  const way = (condition.valve === 'shut' ? 0 : state.valveCommand) - state.valvePosition;
  if (condition.valve === 'sticky' && Math.abs(way) < stickyShare) return;
  state.valvePosition += Math.min(reach, Math.max(-reach, way));
}

function controlValve(state: PlantState, setC: number, dtS: number): void {
  const warmK = state.controlledC - setC;
  const wanted = gainPerK * warmK + state.valveIntegral;
  state.valveCommand = Math.min(1, Math.max(0, wanted));
  const pushing = (wanted > 1 && warmK > 0) || (wanted < 0 && warmK < 0);
  if (!pushing) state.valveIntegral += (gainPerK * warmK * dtS) / integralS;
}
