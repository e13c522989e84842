import type { Fault, FaultSize } from './fault';

/** It restarts by itself after a blink or after its thermal cut-out has cooled, or stays until somebody resets it. */
const lasts: Readonly<Record<FaultSize, number | null>> = { small: 8, usual: 120, large: null };

/** The transfer pump stops by itself. */
export const pumpTrip: Fault = {
  kind: 'pumpTrip',
  title: 'transfer pump tripped',
  inRack: false,
  onsetS: 0,
  repairS: 0,
  lastsS: (size) => lasts[size],
  apply(target, _parameters, _order, strength) {
    if (strength >= 0.5) target.inputs.condition.pumpTripped = true;
  },
};
