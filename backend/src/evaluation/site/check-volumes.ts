import type { PointInFile } from '@ebbline/shared/contract/site-file-points';
import { splitRange, writtenUnit } from '@ebbline/shared/contract/site-file-quantity';
import type { MergedUnit } from './merge-templates';
import type { UnitDesign } from './compiled-unit';
import { siOrNull } from './read-quantities';
import type { FaultList } from './site-fault';

const tankKeys = [
  ['supply', 'supplyTankUsualLevelM', 'supplyTankAreaM2', 'supplyTank.level'],
  ['separator', 'separatorUsualLevelM', 'separatorAreaM2', 'separator.level'],
] as const;

/** Volumes, areas and levels: above 0, and none larger than what holds it. */
export function checkVolumes({ unit, at }: MergedUnit, design: UnitDesign, faults: FaultList): void {
  const { volumes } = design;
  for (const key of [
    'supplyToReturn',
    'water',
    'separatorGas',
    'supplyTankGas',
    'supplyTankUsable',
    'separatorRoom',
  ] as const) {
    const volume = siOrNull(unit.volumes?.[key], 'volume');
    if (volume !== null && !(volume > 0)) faults.add(at('volumes', key), 'expected more than 0');
  }
  const within = (inner: number | null, outer: number | null, key: string, why: string): void => {
    if (inner !== null && outer !== null && inner > outer * 1.001) faults.add(at('volumes', key), why);
  };
  within(volumes.supplyToReturnM3, volumes.waterM3, 'supplyToReturn', 'is more than all water (volumes.water)');
  const { transit } = design;
  if (transit.platesToReturnM3 !== null) {
    const place = at('transit', 'platesToReturn');
    if (!(transit.platesToReturnM3 > 0)) faults.add(place, 'expected more than 0');
    if (volumes.supplyToReturnM3 === null)
      faults.add(place, 'is a part of volumes.supplyToReturn, which is missing; give it too');
    else if (transit.platesToReturnM3 >= volumes.supplyToReturnM3)
      faults.add(place, 'expected less than volumes.supplyToReturn, which it is a part of');
  }
  if (transit.storedHeatJPerK < 0) faults.add(at('transit', 'storedHeat'), 'expected 0 or more');
  if ((transit.plateLagS ?? 0) < 0) faults.add(at('transit', 'plateLag'), 'expected 0 or more');
  if (transit.sensorLagS < 0) faults.add(at('transit', 'sensorLag'), 'expected 0 or more');
  within(
    volumes.separatorRoomM3,
    volumes.separatorGasM3,
    'separatorRoom',
    'is more than the room for gas (volumes.separatorGas), which it is a part of',
  );
  for (const [tank, levelKey, areaKey, point] of tankKeys) {
    const level = volumes[levelKey];
    const area = design[areaKey];
    const height = siOrNull(unit.tanks?.[`${tank}Height`], 'length');
    if (area !== null && !(area > 0)) faults.add(at('tanks', `${tank}Area`), 'expected more than 0');
    if (height !== null && !(height > 0)) faults.add(at('tanks', `${tank}Height`), 'expected more than 0');
    if (level === null) continue;
    const place = at('tanks', `${tank}UsualLevel`);
    if (!(level > 0)) faults.add(place, 'expected more than 0');
    if (height !== null && level > height) faults.add(place, `is above the tank's height of ${height} m`);
    const told = levelRange(unit.points?.[point]);
    if (told !== null && (level < told.from || level > told.to))
      faults.add(place, `lies outside what ${point} can tell (${told.from} to ${told.to} m)`);
  }
  const { supplyTankUsualLevelM, supplyTankUsableM3 } = volumes;
  if (supplyTankUsualLevelM !== null && design.supplyTankAreaM2 !== null)
    within(
      supplyTankUsableM3,
      supplyTankUsualLevelM * design.supplyTankAreaM2,
      'supplyTankUsable',
      'is more than the tank holds at its usual level (supplyArea times supplyUsualLevel)',
    );
}

/** What the level point can tell, m: by its span, else its range. */
function levelRange(point: PointInFile | null | undefined): { readonly from: number; readonly to: number } | null {
  const range = splitRange(point?.span ?? point?.range ?? '');
  const row = range === null ? undefined : writtenUnit(range.unit, 'length');
  return range === null || row === undefined ? null : { from: range.from * row.factor, to: range.to * row.factor };
}
