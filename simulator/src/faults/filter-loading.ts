import type { Fault, FaultSize } from './fault';

/** Resistance against what it was. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 1.6, usual: 3, large: 5 };

/** The filter takes up dirt: more pressure drop at the same flow. */
export const filterLoading: Fault = {
  kind: 'filterLoading',
  title: 'filter loaded',
  inRack: false,
  onsetS: 30,
  repairS: 2,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    target.inputs.condition.filterShare *= 1 + strength * (sizes[order.size] - 1);
  },
};
