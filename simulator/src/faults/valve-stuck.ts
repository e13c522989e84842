import type { ValveCondition } from '../plant/condition';
import type { Fault, FaultSize } from './fault';

const conditions: Readonly<Record<FaultSize, ValveCondition>> = { small: 'sticky', usual: 'stuck', large: 'shut' };

/** The facility valve does not follow its command. Small: it moves in jerks. Usual: it stays where it stands. Large: its spring shuts it. */
export const valveStuck: Fault = {
  kind: 'valveStuck',
  title: 'facility valve stuck',
  inRack: false,
  onsetS: 0,
  repairS: 0,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    if (strength >= 0.5) target.inputs.condition.valve = conditions[order.size];
  },
};
