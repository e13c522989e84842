import type { Fault, FaultSize } from './fault';

/** Bore against the rack hose's: slit, clean cut, both ends of a coupling torn open. */
const sizes: Readonly<Record<FaultSize, number>> = { small: 0.5, usual: 1, large: 1.3 };
/** The stub takes a part of the flow of a sharp opening. Common practice for some diameters of hose, 0.7 to 0.8. */
const stubShare = 0.75;

/** Both hoses of a whole rack are off: more air than the vacuum source carries. The separator loses its vacuum, all flow stops, and water comes out where the low pipes stand above ambient pressure. */
export const cutRackMain: Fault = {
  kind: 'cutRackMain',
  title: 'rack main cut',
  inRack: true,
  onsetS: 0,
  repairS: 0,
  lastsS: () => null,
  apply(target, parameters, order, strength) {
    if (strength < 0.5) return;
    const boreM = parameters.boreM.rackHose * sizes[order.size] * Math.sqrt(stubShare);
    target.inputs.condition.mainCutBoreM[order.rack] = boreM;
  },
};
