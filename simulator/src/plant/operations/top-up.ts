import type { Operation } from './operation';
import { missingInTanksM3 } from './where-it-stands';

/** Share of the usual water of both tanks that a top-up brings in a second. */
const perS = 1 / 1200;

/** Treated water into the running unit: what is missing, or so much as was ordered. The mode stays. */
export const topUp: Operation = {
  kind: 'topUp',
  title: 'top-up',
  inRack: false,
  step({ parameters, state, inputs, order, meterM3 }) {
    const usualM3 = parameters.volumeM3.supplyTankWater + parameters.volumeM3.separatorWater;
    const stillM3 =
      order.volumeM3 === undefined ? missingInTanksM3(parameters, state) : order.volumeM3 - (state.topUpM3 - meterM3);
    inputs.orders.fillM3PerS = stillM3 > 1e-7 ? Math.min(stillM3, usualM3 * perS) : 0;
    return inputs.orders.fillM3PerS === 0;
  },
};
