import type { Fault, FaultSize } from './fault';
import { litrePerMin, waterShareOfM } from './size-of-plant';

/** L/min on a unit of type M. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 0.2, usual: 0.5, large: 2 };

/** Water leaves the pump line: through a drain valve that weeps, or into the unit's own tray. */
export const waterLoss: Fault = {
  kind: 'waterLoss',
  title: 'water loss',
  inRack: false,
  options: ['drain', 'tray'],
  onsetS: 0,
  repairS: 0,
  lastsS: () => null,
  apply(target, parameters, order, strength) {
    const { condition } = target.inputs;
    const m3PerS = sizes[order.size] * waterShareOfM[parameters.kind] * litrePerMin;
    condition.waterLossM3PerS += strength * m3PerS;
    if (order.option === 'tray') condition.lossInTray = true;
  },
};
