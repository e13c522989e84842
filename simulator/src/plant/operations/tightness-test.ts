import type { Operation } from './operation';
import { isEvacuated } from './where-it-stands';

const lastsS = 30 * 60;

/** Evacuated, every source off and all valves shut for half an hour: the pressure's rise is the leak. */
export const tightnessTest: Operation = {
  kind: 'tightnessTest',
  title: 'tightness test',
  inRack: false,
  step({ state, inputs, sinceS }) {
    const { orders } = inputs;
    orders.mode = 'tightnessTest';
    orders.loadPermitted = false;
    orders.loopOpen = false;
    orders.pumpOn = false;
    orders.facilityOpen = false;
    orders.vented = false;
    if (sinceS === 0) orders.vacuumOn = true;
    if (isEvacuated(state, inputs)) orders.vacuumOn = false;
    if (sinceS < lastsS) return false;
    orders.vacuumOn = true;
    orders.mode = 'standby';
    return true;
  },
};
