import type { Operation } from './operation';

/** The new hose is on. */
export const closeHose: Operation = {
  kind: 'closeHose',
  title: 'hose closed',
  inRack: true,
  step({ inputs, order }) {
    inputs.orders.openedHose[order.rack] = null;
    return true;
  },
};
