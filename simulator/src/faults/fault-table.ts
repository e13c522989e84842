import type { Fault, FaultKind } from './fault';
import { connectionLost } from './connection-lost';
import { cutServerHose } from './cut-server-hose';
import { facilityFlowLost } from './facility-flow-lost';
import { loadStep } from './load-step';
import { slowInLeak } from './slow-in-leak';

export const faultTable: Readonly<Record<FaultKind, Fault>> = {
  cutServerHose,
  slowInLeak,
  facilityFlowLost,
  loadStep,
  connectionLost,
};
