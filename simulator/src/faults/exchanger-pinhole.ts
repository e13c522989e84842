import type { Fault, FaultSize } from './fault';
import { litrePerMin, waterShareOfM } from './size-of-plant';

/** L/min on a unit of type M. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 0.5, usual: 2, large: 8 };

/** A hole between the exchanger's two sides: facility water, at a higher pressure, runs into the loop. */
export const exchangerPinhole: Fault = {
  kind: 'exchangerPinhole',
  title: 'exchanger pinhole',
  inRack: false,
  onsetS: 0,
  repairS: 0,
  lastsS: () => null,
  apply(target, parameters, order, strength) {
    const m3PerS = sizes[order.size] * waterShareOfM[parameters.kind] * litrePerMin;
    target.inputs.condition.pinholeM3PerS += strength * m3PerS;
  },
};
