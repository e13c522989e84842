import type { Fault, FaultSize } from './fault';

/** Resistance of the rack's servers against clean. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 2, usual: 4, large: 20 };

/** A valve half shut or dirt in the servers of one rack. */
export const rackBlocked: Fault = {
  kind: 'rackBlocked',
  title: 'rack blocked',
  inRack: true,
  onsetS: 2,
  repairS: 2,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    const { rackResistance } = target.inputs.condition;
    rackResistance[order.rack] = (rackResistance[order.rack] ?? 1) * (1 + strength * (sizes[order.size] - 1));
  },
};
