import type { Operation } from './operation';

/** Valves open again; what gas is trapped goes out with the water. */
export const restoreBranch: Operation = {
  kind: 'restoreBranch',
  title: 'branch restored',
  inRack: true,
  step({ inputs, order }) {
    inputs.orders.isolated[order.rack] = false;
    return true;
  },
};
