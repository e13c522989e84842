import type { FaultKind } from '../../faults/fault';

/** What each fault does to the plant, in one sentence for whoever chooses it. */
export const plantFaultAbout: Readonly<Record<FaultKind, string>> = {
  cutServerHose: 'one server’s hose lies open: room air goes into the rack’s return',
  cutRackMain:
    'both hoses of a rack are off: more air than the vacuum source carries, all flow stops, water comes out low',
  slowInLeak: 'a fitting on the receiver lets room air in',
  vacuumSourceDead: 'a vacuum source stops by itself',
  vacuumCapacityLoss: 'every vacuum source moves less at the same speed',
  sealWaterWarm: 'warm seal water takes capacity from the vacuum source',
  standbyCheckValveLeaks: 'exhaust air runs back through the resting source and is pumped again',
  trapFloatStuck: 'the trap before the vacuum source fills with water or foam',
  overEvacuation: 'the separator is told to hold too low a pressure',
  pumpHeadLoss: 'the pump gives less head at every speed',
  pumpTrip: 'the pump stops by itself',
  filterLoading: 'the filter takes up dirt: more pressure drop at the same flow',
  rackBlocked: 'a valve half shut, or dirt, in one rack',
  plateBlocked: 'dirt in the channels of one cold plate',
  plateResistance: 'the paste between one chip and its plate dries out',
  exchangerFouled: 'scale or slime on the exchanger’s plates',
  exchangerPinhole: 'facility water runs into the loop through a hole in the exchanger',
  facilityWarm: 'the building gives warmer water',
  facilityFlowLost: 'the building’s water stops',
  valveStuck: 'the facility valve does not follow its command',
  ventStuck: 'the supply tank’s bleed and relief stick',
  waterLoss: 'water leaves through a weeping drain or into the unit’s tray',
  overfill: 'the top-up valve does not close',
  powerFailure: 'pumps, vacuum sources and controls lose power; the chips run on',
  ambientFall: 'the barometer falls',
  loadStep: 'all racks take on or drop work at once: no fault of the plant',
  connectionLost: 'the gateway loses its line to the broker; the plant runs on',
};
