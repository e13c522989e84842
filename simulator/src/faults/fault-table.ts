import type { Fault, FaultKind } from './fault';
import { ambientFall } from './ambient-fall';
import { connectionLost } from './connection-lost';
import { cutRackMain } from './cut-rack-main';
import { cutServerHose } from './cut-server-hose';
import { exchangerFouled } from './exchanger-fouled';
import { exchangerPinhole } from './exchanger-pinhole';
import { facilityFlowLost } from './facility-flow-lost';
import { facilityWarm } from './facility-warm';
import { filterLoading } from './filter-loading';
import { loadStep } from './load-step';
import { overEvacuation } from './over-evacuation';
import { overfill } from './overfill';
import { plateBlocked } from './plate-blocked';
import { plateResistance } from './plate-resistance';
import { powerFailure } from './power-failure';
import { pumpHeadLoss } from './pump-head-loss';
import { pumpTrip } from './pump-trip';
import { rackBlocked } from './rack-blocked';
import { sealWaterWarm } from './seal-water-warm';
import { slowInLeak } from './slow-in-leak';
import { standbyCheckValveLeaks } from './standby-check-valve-leaks';
import { trapFloatStuck } from './trap-float-stuck';
import { vacuumCapacityLoss } from './vacuum-capacity-loss';
import { vacuumSourceDead } from './vacuum-source-dead';
import { valveStuck } from './valve-stuck';
import { ventStuck } from './vent-stuck';
import { waterLoss } from './water-loss';

export const faultTable: Readonly<Record<FaultKind, Fault>> = {
  cutServerHose,
  cutRackMain,
  slowInLeak,
  vacuumSourceDead,
  vacuumCapacityLoss,
  sealWaterWarm,
  standbyCheckValveLeaks,
  trapFloatStuck,
  overEvacuation,
  pumpHeadLoss,
  pumpTrip,
  filterLoading,
  rackBlocked,
  plateBlocked,
  plateResistance,
  exchangerFouled,
  exchangerPinhole,
  facilityWarm,
  facilityFlowLost,
  valveStuck,
  ventStuck,
  waterLoss,
  overfill,
  powerFailure,
  ambientFall,
  loadStep,
  connectionLost,
};
