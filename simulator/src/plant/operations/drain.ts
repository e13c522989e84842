import type { Operation } from './operation';

/** The usual water of both tanks runs out within, s. */
const drainS = 240;
const leftShare = 0.1;

/** Load and flow off, then both tanks are emptied down to a tenth. Pipes and racks keep their water. */
export const drain: Operation = {
  kind: 'drain',
  title: 'drain of the tanks',
  inRack: false,
  step({ parameters, state, inputs }) {
    const { orders } = inputs;
    const usualM3 = parameters.volumeM3.supplyTankWater + parameters.volumeM3.separatorWater;
    orders.mode = 'draining';
    orders.loadPermitted = false;
    orders.loopOpen = false;
    orders.pumpOn = false;
    orders.facilityOpen = false;
    const overM3 = state.supplyTankWaterM3 + state.separatorWaterM3 - leftShare * usualM3;
    orders.drainM3PerS = Math.max(0, Math.min(usualM3 / drainS, overM3));
    if (overM3 > 1e-6) return false;
    orders.drainM3PerS = 0;
    orders.mode = 'off';
    return true;
  },
};
