import type { Fault, FaultSize } from './fault';

/** Seal water above its usual 25 °C, K. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 7, usual: 15, large: 25 };

/** The seal water cooler gives too little: a liquid-ring pump loses capacity to the vapour of its own water. */
export const sealWaterWarm: Fault = {
  kind: 'sealWaterWarm',
  title: 'seal water warm',
  inRack: false,
  onsetS: 120,
  repairS: 120,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    target.inputs.condition.sealWarmerK += strength * sizes[order.size];
  },
};
