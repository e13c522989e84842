import type { Fault, FaultSize } from './fault';

/** The fixed part of the resistance from case to water, against new. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 1.5, usual: 2, large: 3 };

/** The thermal paste between one chip and its plate dries out or is pumped out: the same heat over a larger difference. */
export const plateResistance: Fault = {
  kind: 'plateResistance',
  title: 'thermal paste aged',
  inRack: true,
  onsetS: 30,
  repairS: 2,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    const { pasteShare } = target.inputs.condition;
    pasteShare[order.rack] = (pasteShare[order.rack] ?? 1) * (1 + strength * (sizes[order.size] - 1));
  },
};
