import type { Fault, FaultSize } from './fault';

/** Share of UA that is left. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 0.85, usual: 0.75, large: 0.6 };

/** Scale or slime on the plates of the exchanger. */
export const exchangerFouled: Fault = {
  kind: 'exchangerFouled',
  title: 'exchanger fouled',
  inRack: false,
  onsetS: 60,
  repairS: 5,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    target.inputs.condition.exchangerShare *= 1 - strength * (1 - sizes[order.size]);
  },
};
