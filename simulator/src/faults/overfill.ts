import type { Fault, FaultSize } from './fault';
import { litrePerMin, waterShareOfM } from './size-of-plant';

/** L/min on a unit of type M. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 1, usual: 5, large: 20 };

/** The top-up valve does not close: treated water runs in, and the meter counts it. */
export const overfill: Fault = {
  kind: 'overfill',
  title: 'top-up valve open',
  inRack: false,
  onsetS: 0,
  repairS: 0,
  lastsS: () => null,
  apply(target, parameters, order, strength) {
    const m3PerS = sizes[order.size] * waterShareOfM[parameters.kind] * litrePerMin;
    target.inputs.condition.overfillM3PerS += strength * m3PerS;
  },
};
