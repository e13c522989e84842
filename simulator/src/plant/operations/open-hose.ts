import { sonicBoreM } from '../opening-flow';
import type { Operation } from './operation';

/** A coupling with a good check valve, opened on purpose, lets in less than a cut hose: share of the outlet's bore. */
const couplingShare = 0.45;

/** Hose change under a permit: one server's return hose is off, the air it lets in is expected. */
export const openHose: Operation = {
  kind: 'openHose',
  title: 'hose opened under permit',
  inRack: true,
  step({ parameters, inputs, order }) {
    const { freeM3PerS } = order;
    const boreM =
      freeM3PerS === undefined
        ? couplingShare * parameters.boreM.outlet
        : sonicBoreM(freeM3PerS, inputs.ambientPa, inputs.hallC);
    inputs.orders.openedHose[order.rack] = { boreM, checkValveStuckOpen: false };
    return true;
  },
};
