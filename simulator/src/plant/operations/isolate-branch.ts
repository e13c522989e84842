import type { Operation } from './operation';

/** Valves shut on supply and return: the rack becomes a blind pocket, and whoever shuts them has to take its load off. */
export const isolateBranch: Operation = {
  kind: 'isolateBranch',
  title: 'branch isolated',
  inRack: true,
  step({ inputs, order }) {
    inputs.orders.isolated[order.rack] = true;
    return true;
  },
};
