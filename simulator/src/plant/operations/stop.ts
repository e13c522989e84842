import type { Operation } from './operation';
import { platesAreCool } from './where-it-stands';

/** Load off, wait until the plates are cool, then flow off; the vacuum stays on. */
export const stop: Operation = {
  kind: 'stop',
  title: 'stop, vacuum kept',
  inRack: false,
  step({ state, inputs, sinceS }) {
    const { orders } = inputs;
    orders.mode = 'stopping';
    orders.loadPermitted = false;
    // with no flow nothing cools the plates: ten minutes are the most that is waited
    if (!platesAreCool(state) && sinceS < 600) return false;
    orders.loopOpen = false;
    orders.pumpOn = false;
    orders.facilityOpen = false;
    orders.mode = 'off';
    return true;
  },
};
