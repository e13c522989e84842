import type { Operation } from './operation';
import { gasInPipesMol, isEvacuated, isFlowing } from './where-it-stands';

/** Gas that may be left in the pipes when load is let on, mol in a unit of any size: a litre or so. */
const gasLeftMol = 0.02;

/** Vacuum first, then flow, then facility water; load only once the plates have their water. */
export const start: Operation = {
  kind: 'start',
  title: 'start',
  inRack: false,
  step({ parameters, state, inputs }) {
    const { orders } = inputs;
    orders.mode = 'starting';
    orders.vented = false;
    orders.fillM3PerS = 0;
    orders.drainM3PerS = 0;
    orders.vacuumOn = true;
    if (!isEvacuated(state, inputs)) return false;
    orders.pumpOn = true;
    orders.loopOpen = state.supplyTankWaterM3 > 0.7 * parameters.volumeM3.supplyTankWater || orders.loopOpen;
    if (!isFlowing(parameters, state)) return false;
    orders.facilityOpen = true;
    if (gasInPipesMol(state) > gasLeftMol) return false;
    orders.loadPermitted = true;
    orders.mode = 'running';
    return true;
  },
};
