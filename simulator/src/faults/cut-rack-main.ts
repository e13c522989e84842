import type { Fault, FaultSize } from './fault';

/** Bore against the rack hose's: slit, clean cut, both ends of a coupling torn open. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 0.5, usual: 1, large: 1.3 };
/** Friction of the stub takes so much of the flow of a sharp opening. Common practice for 80 diameters of hose, 0.5 to 0.7. */
const pipeShare = 0.6;

/** The hose of a whole rack is off on the return side: more air than the vacuum source carries. The separator loses its vacuum, all flow stops, and water comes out of the low return pipes. */
export const cutRackMain: Fault = {
  kind: 'cutRackMain',
  title: 'rack main cut',
  inRack: true,
  onsetS: 0,
  repairS: 0,
  lastsS: () => null,
  apply(target, parameters, order, strength) {
    if (strength < 0.5) return;
    const boreM = parameters.boreM.rackHose * sizes[order.size] * Math.sqrt(pipeShare);
    target.inputs.condition.mainCutBoreM[order.rack] = boreM;
  },
};
