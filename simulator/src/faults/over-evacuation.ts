import type { Fault, FaultSize } from './fault';

/** Share of the set point that is taken off: 32 kPa becomes 26, 20 and 15. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 0.19, usual: 0.375, large: 0.53 };

/** The separator is told to hold too low a pressure. */
export const overEvacuation: Fault = {
  kind: 'overEvacuation',
  title: 'over-evacuation',
  inRack: false,
  onsetS: 0,
  repairS: 0,
  lastsS: () => null,
  apply(target, parameters, order, strength) {
    target.inputs.condition.separatorSetLowerPa += strength * sizes[order.size] * parameters.set.separatorPa;
  },
};
