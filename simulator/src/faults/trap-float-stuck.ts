import type { Fault, FaultSize } from './fault';

/** How far the trap fills. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 0.2, usual: 0.6, large: 1 };

/** The trap before the vacuum source fills: its float sticks, or foam comes over. Water in the source takes capacity. */
export const trapFloatStuck: Fault = {
  kind: 'trapFloatStuck',
  title: 'trap float stuck',
  inRack: false,
  options: ['water', 'foam'],
  onsetS: 120,
  repairS: 20,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    const { condition } = target.inputs;
    condition.trapFilledShare = Math.max(condition.trapFilledShare, strength * sizes[order.size]);
  },
};
