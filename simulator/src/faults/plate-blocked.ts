import type { Fault, FaultSize } from './fault';

/** Share of the plate's flow that is lost. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 0.3, usual: 0.6, large: 0.9 };

/** Dirt in the channels of one cold plate. */
export const plateBlocked: Fault = {
  kind: 'plateBlocked',
  title: 'plate blocked',
  inRack: true,
  onsetS: 5,
  repairS: 2,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    const { plateFlowShare } = target.inputs.condition;
    plateFlowShare[order.rack] = (plateFlowShare[order.rack] ?? 1) * (1 - strength * sizes[order.size]);
  },
};
