import { airPoints } from './derived/air-points';
import { chipPoints } from './derived/chip-points';
import { energyUncertaintyPoints } from './derived/energy-points';
import { exchangerPoints } from './derived/exchanger-points';
import { heatPoints } from './derived/heat-points';
import { hydraulicPoints } from './derived/hydraulic-points';
import { pressurePoints } from './derived/pressure-points';
import { tankPoints } from './derived/tank-points';
import { trendPoints } from './derived/trend-points';
import { waterPoints } from './derived/water-points';
import type { PointRow } from './quantity-kind';

/** What Ebbline works out; every unit has those whose inputs it has. */
export const derivedOfHall: readonly PointRow[] = [['dewPoint', 'temperature', 'Cel', 'Dew point']];

export const derivedOfUnit: readonly PointRow[] = [
  ...heatPoints,
  ...exchangerPoints,
  ...pressurePoints,
  ...airPoints,
  ...tankPoints,
  ...hydraulicPoints,
  ...chipPoints,
  ...waterPoints,
  ...trendPoints,
  ...energyUncertaintyPoints,
];
