import { compileCommissioning, compileKnownGood, compileTransit, compileVolumes } from './compile-commissioning';
import { compileFanPath } from './compile-parts';
import { compilePipes } from './compile-pipes';
import { designNotStated } from './design-not-stated';
import type { PlantShape, UnitDesign, VacuumSource, WettedNode } from './compiled-site';
import type { MergedUnit } from './merge-templates';
import { siOr, siOrNull } from './read-quantities';
import type { FaultList } from './site-fault';

const defaultElevationAccuracyM = 0.05;

/** Numbers of the unit that no sensor gives, with a fault for each that the shape cannot do without. */
export function compileDesign({ unit, at }: MergedUnit, faults: FaultList): UnitDesign {
  const { elevations = {}, pump = {}, tanks = {} } = unit;
  const height = (key: keyof typeof elevations): number | null => siOrNull(elevations[key], 'length');
  const need = (key: keyof typeof elevations, why: string): void => {
    if (elevations[key] === undefined)
      faults.add(at('elevations', key), `is missing; ${why}; give it as height above the floor datum, such as 1.0 m`);
  };
  const shape = unit.shape;
  if (shape === 'a' || shape === 'b')
    need('supplyTankSurface', 'the supply main hangs on it, and so the vacuum margin');
  if (shape === 'c') need('supplySensor', 'without a supply tank the supply main hangs on supply.pressure');
  if (shape !== undefined) need('returnInlet', 'the return main hangs on it, and so both margins');
  if (pump.npshLimit !== undefined) {
    need('pumpInlet', 'pump.npshLimit is judged there');
    need('separatorSurface', 'pump.npshLimit is judged from there');
  }
  for (const key of ['supply', 'return'] as const)
    if (unit.points?.[`${key}.pressure`] !== undefined)
      need(`${key}Sensor`, `${key}.pressure is measured there, and 1 m is 9.8 kPa`);
  const ratedFlow = siOrNull(unit.ratedFlow, 'volumeFlow');
  if (ratedFlow === null) faults.add(at('ratedFlow'), 'is missing; the losses hold at it; give it, such as 346 L/min');
  else if (!(ratedFlow > 0)) faults.add(at('ratedFlow'), 'expected more than 0');
  return {
    ratedFlowM3PerS: ratedFlow ?? Number.NaN,
    ratedHeatW: siOrNull(unit.ratedHeat, 'power'),
    supplySetPointC: siOrNull(unit.supplySetPoint, 'temperature'),
    supplyTankSurfaceM: height('supplyTankSurface'),
    separatorSurfaceM: height('separatorSurface'),
    returnInletM: height('returnInlet'),
    pumpInletM: height('pumpInlet'),
    supplySensorM: height('supplySensor'),
    returnSensorM: height('returnSensor'),
    npshLimitM: siOrNull(pump.npshLimit, 'length'),
    pumpSuctionLossPa: siOr(pump.suctionLoss, 'pressureDifference', 0),
    plateWallResistanceKPerW: siOrNull(unit.plateWallResistance, 'thermalResistance'),
    elevationAccuracyM: siOr(elevations.accuracy, 'length', defaultElevationAccuracyM),
    separatorAreaM2: siOrNull(tanks.separatorArea, 'area'),
    supplyTankAreaM2: siOrNull(tanks.supplyArea, 'area'),
    hoseBoreM: siOrNull(unit.hoseBore, 'length'),
    openingDischargeCoefficient: unit.openingDischargeCoefficient ?? designNotStated.openingDischargeCoefficient,
    volumes: compileVolumes(unit),
    transit: compileTransit(unit),
    commissioned: compileCommissioning(unit, ratedFlow ?? Number.NaN),
    supplyClassLimitC: siOrNull(unit.supplyClassLimit, 'temperature'),
    plateLimitC: siOrNull(unit.plateLimit, 'temperature'),
    facilityDesignSupplyC: siOrNull(unit.facilityDesignSupply, 'temperature'),
    filterRatingPa: siOrNull(unit.filterRating, 'pressureDifference'),
    plateHeatCapacityJPerK: siOrNull(unit.plateHeatCapacity, 'heatCapacity'),
    fanPath: compileFanPath(unit),
    ...compilePipes(unit),
    knownGood: compileKnownGood(unit),
  };
}

export function compileShape({ unit, at }: MergedUnit, faults: FaultList): PlantShape {
  if (unit.shape === undefined) faults.add(at('shape'), 'is missing; expected a, b or c; first actions depend on it');
  return unit.shape ?? 'a';
}

/** Wetted places; `firstPlace` is the index of the first one in the holder's places. */
export function compileNodes({ unit, at }: MergedUnit, firstPlace: number, faults: FaultList): readonly WettedNode[] {
  const branches = Object.keys(unit.branches ?? {});
  const ofBranch = (branch: string | undefined, node: string): { readonly branch?: number } => {
    if (branch === undefined) return {};
    if (!branches.includes(branch))
      faults.add(at('nodes', node, 'branch'), `there is no branch "${branch}" in this unit; add it or correct the id`);
    return { branch: branches.indexOf(branch) };
  };
  const nodes = Object.entries(unit.nodes ?? {}).flatMap(([id, node], i) => {
    if (node === null) return [];
    if (node.main === undefined) faults.add(at('nodes', id, 'main'), 'is missing; expected supply or return');
    if (node.elevation === undefined)
      faults.add(at('nodes', id, 'elevation'), 'is missing; expected the height above the floor datum, such as -0.5 m');
    return [
      {
        id,
        name: node.name ?? id,
        main: node.main ?? ('supply' as const),
        elevationM: siOr(node.elevation, 'length', 0),
        lossAtRatedFlowPa: siOr(node.loss, 'pressureDifference', 0),
        ...ofBranch(node.branch, id),
        place: firstPlace + i,
      },
    ];
  });
  for (const main of ['supply', 'return'] as const)
    if (!nodes.some((node) => node.main === main))
      faults.add(
        at('nodes'),
        `no wetted place on the ${main} main; without one no margin can be told; give at least its lowest and its highest place`,
      );
  return nodes;
}

export function compileVacuumSource({ unit, at }: MergedUnit, faults: FaultList): VacuumSource | null {
  const source = unit.vacuumSource;
  if (source === undefined) return null;
  if (source.curve === undefined) {
    faults.add(at('vacuumSource', 'curve'), 'is missing; give at least two rows of pressure and suction');
    return null;
  }
  const pressurePa = source.curve.map((row) => siOr(row.pressure, 'absolutePressure', Number.NaN));
  const suctionM3PerS = source.curve.map((row) => siOr(row.suction, 'volumeFlow', Number.NaN));
  pressurePa.forEach((pressure, i) => {
    if (!(pressure > (pressurePa[i - 1] ?? 0)))
      faults.add(at('vacuumSource', 'curve', i, 'pressure'), 'expected pressures that rise from row to row, above 0');
    if (!((suctionM3PerS[i] ?? -1) >= 0)) faults.add(at('vacuumSource', 'curve', i, 'suction'), 'expected 0 or more');
  });
  return {
    count: source.count ?? 1,
    control: source.control ?? 'speed',
    ...(source.control === undefined ? {} : { controlStated: true }),
    sealWaterC: siOrNull(source.sealWaterTemperature, 'temperature'),
    pressurePa,
    suctionM3PerS,
  };
}
