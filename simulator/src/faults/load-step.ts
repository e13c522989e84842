import type { Fault, FaultSize } from './fault';

const sizes: Readonly<Record<FaultSize, number>> = { small: 0.2, usual: 0.4, large: 0.6 };
/** Chips cannot draw more than this share of rated power. */
const mostShare = 1.4;

/** All racks of a unit take on or drop work at once. No fault of the plant: it must not look like one. */
export const loadStep: Fault = {
  kind: 'loadStep',
  title: 'load step',
  inRack: false,
  onsetS: 0,
  repairS: 0,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    const change = strength * sizes[order.size] * (order.direction === 'rise' ? 1 : -1);
    const { loadShare } = target.inputs;
    for (let r = 0; r < loadShare.length; r += 1) {
      loadShare[r] = Math.min(mostShare, Math.max(0, (loadShare[r] ?? 0) + change));
    }
  },
};
