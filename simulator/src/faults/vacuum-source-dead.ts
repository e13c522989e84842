import type { Fault } from './fault';
import { litrePerMin } from './size-of-plant';

/**
 * The vacuum source that runs stops by itself. Small: the standby takes over. Usual: there is none. Large: and the dead
 * one's check valve does not close well.
 */
export const vacuumSourceDead: Fault = {
  kind: 'vacuumSourceDead',
  title: 'vacuum source dead',
  inRack: false,
  onsetS: 0,
  repairS: 0,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    if (strength < 0.5) return;
    const { condition } = target.inputs;
    condition.leadDead = true;
    condition.standbyDead = order.size !== 'small';
    if (order.size === 'large') condition.standbyCheckFreeM3PerS += 5 * litrePerMin;
  },
};
