import { dewPoint } from '@ebbline/shared/fluid-properties/moist-air';
import type { DerivedPointOfHall, DerivedPointOfUnit } from './derived-point';
import { deriveDewPoint } from './points/dew-point';
import { airPoints } from './tables/air-points';
import { chipPoints } from './tables/chip-points';
import { energyPoints } from './tables/energy-points';
import { exchangerPoints } from './tables/exchanger-points';
import { flowPoints } from './tables/flow-points';
import { loopPoints } from './tables/loop-points';
import { pipePoints } from './tables/pipe-points';
import { platePoints } from './tables/plate-points';
import { tankPoints } from './tables/tank-points';
import { waterPoints } from './tables/water-points';
import { trendPoints } from './tables/trend-points';

/** Every derived point of a hall; worked out before those of its units. */
export const derivedPointsOfHall: readonly DerivedPointOfHall[] = [
  {
    id: 'dewPoint',
    unit: 'Cel',
    inputs: ['hall.temperature', 'hall.humidity'],
    formula: 'T_d by e = RH·e_w(T)',
    source: 'WMO-No. 8, annex 4.B',
    equation: dewPoint,
    derive: deriveDewPoint,
  },
];

/** Every derived point of a unit, in the order in which they are worked out: a row may use the rows above it. */
export const derivedPointsOfUnit: readonly DerivedPointOfUnit[] = [
  ...loopPoints,
  ...exchangerPoints,
  ...airPoints,
  ...tankPoints,
  ...flowPoints,
  ...pipePoints,
  ...chipPoints,
  ...platePoints,
  ...trendPoints,
  ...waterPoints,
  ...energyPoints,
];
