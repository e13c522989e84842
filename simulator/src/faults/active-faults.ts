import { copyCondition } from '../plant/condition';
import type { PlantParameters } from '../plant/plant-parameters';
import type { FaultOrder, FaultTarget } from './fault';
import { faultTable } from './fault-table';

/** A fault that is in the plant, or is just leaving it. Times in seconds of the plant. */
export interface ActiveFault {
  readonly order: FaultOrder;
  readonly sinceS: number;
  repairedS: number | null;
}

/** How far a fault has come or gone: first order both ways. */
export function strengthOf(active: ActiveFault, nowS: number): number {
  const { onsetS, repairS } = faultTable[active.order.fault];
  const rise = (ageS: number, timeS: number): number => (timeS > 0 ? 1 - Math.exp(-ageS / timeS) : 1);
  if (active.repairedS === null) return rise(nowS - active.sinceS, onsetS);
  const reached = rise(active.repairedS - active.sinceS, onsetS);
  return reached * (1 - rise(nowS - active.repairedS, repairS));
}

/** Puts the unit's parts back to their ageing, applies every fault to them, ends those whose time is over, and drops those that are gone. */
export function applyFaults(list: ActiveFault[], target: FaultTarget, parameters: PlantParameters, nowS: number): void {
  copyCondition(target.inputs.aged, target.inputs.condition);
  for (let i = list.length - 1; i >= 0; i -= 1) {
    const active = list[i] as ActiveFault;
    const fault = faultTable[active.order.fault];
    const lastsS = fault.lastsS(active.order.size);
    if (active.repairedS === null && lastsS !== null && nowS - active.sinceS >= lastsS) active.repairedS = nowS;
    const strength = strengthOf(active, nowS);
    if (active.repairedS !== null && strength < 0.001) list.splice(i, 1);
    else fault.apply(target, parameters, active.order, strength);
  }
}
