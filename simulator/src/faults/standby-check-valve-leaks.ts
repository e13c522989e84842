import type { Fault, FaultSize } from './fault';
import { airShareOfM, litrePerMin } from './size-of-plant';

/** L/min of free air on a unit of type M. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 5, usual: 20, large: 60 };

/** The check valve of the resting vacuum source does not close: exhaust air runs back to the separator and is pumped again. No meter in the exhaust sees it; the running source works harder. */
export const standbyCheckValveLeaks: Fault = {
  kind: 'standbyCheckValveLeaks',
  title: 'check valve of the standby leaks',
  inRack: false,
  onsetS: 5,
  repairS: 0,
  lastsS: () => null,
  apply(target, parameters, order, strength) {
    const freeM3PerS = sizes[order.size] * airShareOfM[parameters.kind] * litrePerMin;
    target.inputs.condition.standbyCheckFreeM3PerS += strength * freeM3PerS;
  },
};
