import type { Fault, FaultSize } from './fault';
import { airShareOfM, litrePerMin } from './size-of-plant';

/** L/min of free air on a unit of type M. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 5, usual: 20, large: 60 };

/** A fitting on the receiver lets room air in. */
export const slowInLeak: Fault = {
  kind: 'slowInLeak',
  title: 'slow in-leak',
  inRack: false,
  onsetS: 20,
  repairS: 0,
  lastsS: () => null,
  apply(target, parameters, order, strength) {
    target.inputs.inLeakFreeM3PerS += strength * sizes[order.size] * airShareOfM[parameters.kind] * litrePerMin;
  },
};
