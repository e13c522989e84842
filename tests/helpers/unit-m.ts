import { designNotStated } from '../../backend/src/evaluation/site/design-not-stated';
import type { CompiledSite, UnitDesign, WettedNode } from '../../backend/src/evaluation/site/compiled-site';

/** Wetted nodes, elevations and losses of unit M of the demo plant's parameter set. */
export const nodesOfUnitM: readonly WettedNode[] = [
  { id: 'floorSupply', name: 'Floor supply main', main: 'supply', elevationM: -0.5, lossAtRatedFlowPa: 800, place: 0 },
  {
    id: 'manifoldTopSupply',
    name: 'Supply manifold, top',
    main: 'supply',
    elevationM: 2,
    lossAtRatedFlowPa: 8_900,
    place: 1,
  },
  {
    id: 'manifoldTopReturn',
    name: 'Return manifold, top',
    main: 'return',
    elevationM: 2,
    lossAtRatedFlowPa: 8_900,
    place: 2,
  },
  {
    id: 'floorReturn',
    name: 'Floor return main',
    main: 'return',
    elevationM: -0.5,
    lossAtRatedFlowPa: 3_000,
    place: 3,
  },
];

export const designOfUnitM: UnitDesign = {
  ...designNotStated,
  ratedFlowM3PerS: 346 / 60_000,
  ratedHeatW: 240_000,
  supplySetPointC: 36.3,
  supplyTankSurfaceM: 1,
  separatorSurfaceM: 0.6,
  returnInletM: 1.2,
  pumpInletM: 0.15,
  supplySensorM: 1,
  returnSensorM: 1.2,
  npshLimitM: 2.1,
  pumpSuctionLossPa: 2_430,
  plateWallResistanceKPerW: null,
  elevationAccuracyM: 0.05,
  separatorAreaM2: null,
  supplyTankAreaM2: null,
  hoseBoreM: 0.005,
};

/** What `runUnitM` needs of a built site. */
interface Settable {
  readonly site: CompiledSite;
  set(point: string, value: number, atMs?: number): void;
}

/** Unit M as it runs: 346 L/min, 74 kPa in the supply tank, 32 in the separator, 36.3 and 45 °C, 101.3 kPa outside. */
export function runUnitM(built: Settable, atMs = 0): void {
  const running: Readonly<Record<string, number>> = {
    'ambient.pressure': 101_300,
    'hall.temperature': 27,
    'hall.humidity': 0.4,
    'supply.temperature': 36.3,
    'return.temperature': 45,
    'facility.supply.temperature': 30,
    'supplyTank.pressure': 74_000,
    'separator.pressure': 32_000,
    'loop.flow': 346 / 60_000,
    'vacuum.exhaustFlow': 1 / 60_000,
    'vacuum.speed': 0.2,
    'vacuum.running': 1,
    'pump.running': 1,
    'pump.speed': 0.94,
    'separator.level': 0.6,
    'supplyTank.level': 0.5,
    'water.found': 0,
    mode: 6,
    'branch.r1.flow': 43 / 60_000,
    'branch.r1.return.temperature': 45,
    'branch.r1.power': 30_000,
    'branch.r2.flow': 43 / 60_000,
    'branch.r2.return.temperature': 44,
    'branch.r2.power': 30_000,
  };
  const has = (point: string): boolean => built.site.slots.pointId.includes(point);
  for (const [point, value] of Object.entries(running)) if (has(point)) built.set(point, value, atMs);
}
