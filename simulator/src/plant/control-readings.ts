import { plantModes, type PlantMode } from './orders';
import type { PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import type { Readings } from './reading-names';
import { levelIsHigh } from './separator';
import { separatorSetPa, supplyTankSetPa } from './set-points';
import { standbyAvailable } from './standby-source';
import { conductivitySPerM } from './salts';
import { pumpDischargePa } from './transfer-pump';
import { vacuumPowerW } from './vacuum-source';

/** A rope or a tray tells water from so much on, m³. */
export const wetFromM3 = 2e-5;
/** A trap is full once it is filled by more than half, or while a full separator runs over into it. */
const trapFullShare = 0.5;

/** Commands, set points, states of machines and water quality of the unit. */
export function readControls(
  readings: Readings,
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
): void {
  const { orders, condition } = inputs;
  const yesNo = (point: string, value: boolean): void => void readings.set(point, value ? 1 : 0);
  readings.set('transfer.flow', state.last.transferM3PerS);
  readings.set('pump.discharge.pressure', pumpDischargePa(parameters, state, inputs));
  yesNo('pump.command', orders.pumpOn);
  yesNo('vacuum.command', orders.vacuumOn && (state.vacuumRunning || parameters.vacuum.control === 'continuous'));
  if (parameters.vacuum.sources > 1) {
    yesNo('vacuum.available', standbyAvailable(parameters.vacuum, inputs));
    yesNo('vacuum.standby.running', state.standbySpeed > 0 && !condition.powerLost);
  }
  readings.set('vacuum.power', vacuumPowerW(parameters, state, inputs));
  readings.set('vacuum.sealWater.temperature', parameters.vacuum.sealC + condition.sealWarmerK);
  yesNo('vacuum.trap.full', condition.trapFilledShare > trapFullShare || state.last.carriedOverM3PerS > 0);
  readings.set('vacuum.bleedFlow', state.last.vacuumBleedM3PerS);
  readings.set('supplyTank.vent.command', state.ventCommand);
  readings.set('supplyTank.vent.position', state.ventPosition);
  yesNo('separator.levelHigh', levelIsHigh(parameters, state));
  readings.set('topUp.volume', state.topUpM3);
  readings.set('supply.setPoint', orders.supplySetC);
  readings.set('supplyTank.setPoint', supplyTankSetPa(inputs));
  readings.set('separator.setPoint', separatorSetPa(inputs));
  yesNo('control.manual', orders.valveByHand !== null);
  yesNo('tray.water.found', state.trayM3 > wetFromM3);
  readings.set('mode', plantModes.indexOf(modeTold(state, inputs)));
  readings.set('water.conductivity', conductivitySPerM(parameters, state));
}

/** Controls without power tell what they told last. */
function modeTold({ returningS }: PlantState, { condition, orders }: PlantInputs): PlantMode {
  return orders.mode === 'running' && returningS > 0 && !condition.powerLost ? 'powerReturn' : orders.mode;
}
