import type { Fault, FaultSize } from './fault';

/** A dip, a failure until the standby supply has started, and one that stays until repaired. */
const lasts: Readonly<Record<FaultSize, number | null>> = { small: 8, usual: 60, large: null };

/** Pumps, vacuum sources and controllers of the unit lose power; chips run on. Everything starts again by itself once it is back. The supply tank's bleed goes on by its own force or falls shut. */
export const powerFailure: Fault = {
  kind: 'powerFailure',
  title: 'power failure',
  inRack: false,
  options: ['bleedOpen', 'bleedShut'],
  onsetS: 0,
  repairS: 0,
  lastsS: (size) => lasts[size],
  apply(target, _parameters, order, strength) {
    if (strength < 0.5) return;
    const { condition } = target.inputs;
    condition.powerLost = true;
    condition.bleedFailsShut = order.option === 'bleedShut';
  },
};
