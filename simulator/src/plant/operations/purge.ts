import type { Operation } from './operation';
import { gasInPipesMol, isEvacuated } from './where-it-stands';

const leastS = 120;
const mostS = 1200;
const gasLeftMol = 0.005;

/** Water moves without load until it brings no more gas. */
export const purge: Operation = {
  kind: 'purge',
  title: 'purge of gas',
  inRack: false,
  step({ state, inputs, sinceS }) {
    const { orders } = inputs;
    orders.mode = 'purging';
    orders.loadPermitted = false;
    orders.vented = false;
    orders.vacuumOn = true;
    if (!isEvacuated(state, inputs)) return false;
    orders.pumpOn = true;
    orders.loopOpen = true;
    orders.facilityOpen = true;
    const clean = sinceS >= leastS && gasInPipesMol(state) < gasLeftMol;
    if (!clean && sinceS < mostS) return false;
    orders.mode = 'starting';
    return true;
  },
};
