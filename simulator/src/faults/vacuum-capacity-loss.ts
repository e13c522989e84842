import type { Fault, FaultSize } from './fault';

/** Share of the capacity that is lost. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 0.15, usual: 0.35, large: 0.6 };

/** Wear, a slack belt or a leaking valve plate: every vacuum source moves less at the same speed. */
export const vacuumCapacityLoss: Fault = {
  kind: 'vacuumCapacityLoss',
  title: 'vacuum source worn',
  inRack: false,
  onsetS: 60,
  repairS: 5,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    target.inputs.condition.vacuumShare *= 1 - strength * sizes[order.size];
  },
};
