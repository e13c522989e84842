import type { Operation } from './operation';
import { isEvacuated } from './where-it-stands';

/** A vented unit is shut and brought back under vacuum. */
export const evacuate: Operation = {
  kind: 'evacuate',
  title: 'evacuate',
  inRack: false,
  step({ state, inputs }) {
    const { orders } = inputs;
    orders.mode = 'starting';
    orders.vented = false;
    orders.vacuumOn = true;
    if (!isEvacuated(state, inputs)) return false;
    orders.mode = 'standby';
    return true;
  },
};
