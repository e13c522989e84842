import type { Fault, FaultSize } from './fault';

/** Share of the head at no flow that is lost. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 0.08, usual: 0.2, large: 0.35 };

/** A worn impeller or gas in the pump: less head at every speed. */
export const pumpHeadLoss: Fault = {
  kind: 'pumpHeadLoss',
  title: 'transfer pump worn',
  inRack: false,
  onsetS: 30,
  repairS: 5,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    target.inputs.condition.pumpHeadShare *= 1 - strength * sizes[order.size];
  },
};
