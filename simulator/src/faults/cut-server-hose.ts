import type { Fault, FaultSize } from './fault';

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
    const { outlet, serverHose } = parameters.boreM;
    const boreM = order.size === 'large' ? serverHose : outlet * boreShare[order.size];
    target.inputs.opening[order.rack] = { boreM, checkValveStuckOpen: order.checkValve === 'stuckOpen' };
  },
};
