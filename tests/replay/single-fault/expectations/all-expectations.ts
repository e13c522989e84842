import type { Expectation } from '../fault-expectation';
import { airExpectations } from './air';
import { facilityExpectations } from './facility';
import { lineAndLoadExpectations } from './line-and-load';
import { machineExpectations } from './machines';
import { powerExpectations } from './power';
import { rackExpectations } from './racks';
import { tankExpectations } from './tanks';
import { vacuumExpectations } from './vacuum';
import { waterExpectations } from './water';

/** What an operator is told of every fault within five minutes. */
export const expectations: readonly Expectation[] = [
  ...airExpectations,
  ...vacuumExpectations,
  ...machineExpectations,
  ...powerExpectations,
  ...rackExpectations,
  ...facilityExpectations,
  ...waterExpectations,
  ...lineAndLoadExpectations,
  ...tankExpectations,
];
