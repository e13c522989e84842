import type { Operation } from './operation';

/** Stopped under vacuum, ready to start: as after a stop, and told so. */
export const standby: Operation = {
  kind: 'standby',
  title: 'standby under vacuum',
  inRack: false,
  step({ inputs: { orders } }) {
    orders.loadPermitted = false;
    orders.loopOpen = false;
    orders.pumpOn = false;
    orders.facilityOpen = false;
    orders.vacuumOn = true;
    orders.vented = false;
    orders.mode = 'standby';
    return true;
  },
};
