import type { PlantInputs } from '../plant/plant-inputs';
import { sonicBoreM } from '../plant/opening-flow';
import type { PlantParameters } from '../plant/plant-parameters';
import type { Fault, FaultOrder, FaultSize } from './fault';
import { litrePerMin } from './size-of-plant';

/** Bore against the outlet coupling's: a slit hose, a clean cut, a coupling torn off so that the whole hose bore is open. */
const boreShare: Readonly<Record<Exclude<FaultSize, 'large'>, number>> = { small: 0.6, usual: 1 };

/** One server's hose lies open: room air into the return, and with a stuck check valve into the supply manifold too. */
export const cutServerHose: Fault = {
  kind: 'cutServerHose',
  title: 'server hose cut',
  inRack: true,
  onsetS: 0,
  repairS: 0,
  lastsS: () => null,
  apply(target, parameters, order, strength) {
    if (strength < 0.5) return;
    const boreM = boreOf(order, parameters, target.inputs);
    target.inputs.opening[order.rack] = { boreM, checkValveStuckOpen: order.checkValve === 'stuckOpen' };
  },
};

function boreOf(
  { freeLPerMin, size }: FaultOrder,
  { boreM }: PlantParameters,
  { ambientPa, hallC }: PlantInputs,
): number {
  const freeM3PerS = Number(freeLPerMin ?? Number.NaN) * litrePerMin;
  if (!Number.isNaN(freeM3PerS)) return sonicBoreM(freeM3PerS, ambientPa, hallC);
  return size === 'large' ? boreM.serverHose : boreM.outlet * boreShare[size];
}
