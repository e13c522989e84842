import type { Fault, FaultSize } from './fault';

/** K above usual. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 1.5, usual: 3, large: 5 };

/** The building gives warmer water. */
export const facilityWarm: Fault = {
  kind: 'facilityWarm',
  title: 'facility water warm',
  inRack: false,
  onsetS: 10,
  repairS: 10,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    target.inputs.facilitySupplyC += strength * sizes[order.size];
  },
};
