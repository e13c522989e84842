import type { Fault, FaultSize } from './fault';

/** Pa below usual. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 1500, usual: 3000, large: 4500 };

/** A deep low: ambient pressure falls. It lies over a whole hall: whoever tells a barometer moves that too. */
export const ambientFall: Fault = {
  kind: 'ambientFall',
  title: 'barometer falls',
  inRack: false,
  onsetS: 60,
  repairS: 60,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    target.inputs.ambientPa -= strength * sizes[order.size];
  },
};
