import type { Fault, FaultSize } from './fault';

/** Share of the facility flow that is left: one of two pumps gone, all gone, all gone and at once. */
const left: Readonly<Record<FaultSize, number>> = { small: 0.4, usual: 0, large: 0 };

/** The building's water stops: pumps coast down over some seconds, or a valve slams shut. */
export const facilityFlowLost: Fault = {
  kind: 'facilityFlowLost',
  title: 'facility flow lost',
  inRack: false,
  onsetS: 3,
  repairS: 6,
  lastsS: () => null,
  apply(target, _parameters, order, strength) {
    const share = order.size === 'large' && strength > 0 ? 1 : strength;
    target.inputs.facilityFlowShare *= 1 - share * (1 - left[order.size]);
  },
};
