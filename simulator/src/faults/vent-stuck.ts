import type { VentCondition } from '../plant/condition';
import type { Fault, FaultSize } from './fault';

const conditions: Readonly<Record<FaultSize, VentCondition>> = {
  small: 'limited',
  usual: 'stuckShut',
  large: 'stuckOpen',
};

/** The vent of the supply tank, bleed and relief, sticks. Small: the relief opens by a fifth. Usual: shut both ways, seen only once the tank wants gas in or out. Large: open to the room. */
export const ventStuck: Fault = {
  kind: 'ventStuck',
  title: 'vent stuck',
  inRack: false,
  onsetS: 0,
  repairS: 0,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    if (strength >= 0.5) target.inputs.condition.vent = conditions[order.size];
  },
};
