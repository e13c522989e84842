import type { Fault, FaultSize } from './fault';

/** A blink, an outage that ends by itself, and one that stays until repaired. */
const lasts: Readonly<Record<FaultSize, number | null>> = { small: 4, usual: 60, large: null };

/** The gateway loses its line to the broker: no telemetry of any of its units, and its last will is told. The plant runs on. */
export const connectionLost: Fault = {
  kind: 'connectionLost',
  title: 'connection lost',
  inRack: false,
  onsetS: 0,
  repairS: 0,
  lastsS: (size) => lasts[size],
  apply(target, _parameters, _order, strength) {
    if (strength >= 0.5) target.lineLost = true;
  },
};
