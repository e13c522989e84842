import type { Operation } from './operation';
import { isEvacuated, missingInTanksM3 } from './where-it-stands';

/** The usual water of both tanks goes in within, s. */
const fillS = 240;

/** Treated water drawn in under vacuum until both tanks hold their usual water, or so much as was ordered. */
export const fill: Operation = {
  kind: 'fill',
  title: 'fill under vacuum',
  inRack: false,
  step({ parameters, state, inputs, order, meterM3 }) {
    const { orders } = inputs;
    const { supplyTankWater, separatorWater } = parameters.volumeM3;
    orders.mode = 'filling';
    orders.loadPermitted = false;
    orders.loopOpen = false;
    orders.vented = false;
    orders.vacuumOn = true;
    if (!isEvacuated(state, inputs)) return false;
    // the pump passes the supply tank's share on
    orders.pumpOn = true;
    const stillM3 =
      order.volumeM3 === undefined ? missingInTanksM3(parameters, state) : order.volumeM3 - (state.topUpM3 - meterM3);
    orders.fillM3PerS = stillM3 > 0 ? Math.min(stillM3, (supplyTankWater + separatorWater) / fillS) : 0;
    if (stillM3 > 1e-6) return false;
    orders.fillM3PerS = 0;
    orders.pumpOn = false;
    orders.mode = 'standby';
    return true;
  },
};
