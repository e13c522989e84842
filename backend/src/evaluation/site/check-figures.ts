import type { MergedUnit } from './merge-templates';
import type { UnitDesign, WettedNode } from './compiled-unit';
import { checkCommissioning, checkKnownGood } from './check-commissioning';
import { checkPipes } from './check-pipes';
import { checkRecords } from './check-records';
import { checkVolumes } from './check-volumes';
import { siOrNull } from './read-quantities';
import type { FaultList } from './site-fault';

/** Whether the figures of a unit are possible, and agree with each other. */
export function checkFigures(
  merged: MergedUnit,
  design: UnitDesign,
  nodes: readonly WettedNode[],
  faults: FaultList,
  warnings: FaultList,
): void {
  checkTemperatures(merged, design, faults);
  checkVacuumSource(merged, faults, warnings);
  checkVolumes(merged, design, faults);
  checkRecords(merged, design, faults, warnings);
  checkPipes(merged, design, faults);
  checkCommissioning(merged, design, nodes, faults);
  checkKnownGood(merged, design, faults);
  const { at, unit } = merged;
  const positive: readonly (readonly [value: number | null, ...keys: string[]])[] = [
    [design.plateHeatCapacityJPerK, 'plateHeatCapacity'],
    [design.filterRatingPa, 'filterRating'],
    [design.fanPath?.resistanceKPerW ?? null, 'fanPath', 'resistance'],
    [design.plateWallResistanceKPerW, 'plateWallResistance'],
  ];
  for (const [value, ...keys] of positive)
    if (value !== null && !(value > 0)) faults.add(at(...keys), 'expected more than 0');
  if (unit.fanPath !== undefined && unit.fanPath.resistance === undefined)
    faults.add(at('fanPath', 'resistance'), 'is missing; give it from chip case to hall air, such as 0.167 K/W');
}

function checkTemperatures({ at }: MergedUnit, design: UnitDesign, faults: FaultList): void {
  const { supplySetPointC: supply, supplyClassLimitC, plateLimitC, facilityDesignSupplyC } = design;
  if (supply !== null) {
    const higher = (value: number | null, key: string): void => {
      if (value !== null && !(value > supply)) faults.add(at(key), `expected more than supplySetPoint (${supply} °C)`);
    };
    higher(supplyClassLimitC, 'supplyClassLimit');
    higher(plateLimitC, 'plateLimit');
    if (facilityDesignSupplyC !== null && !(facilityDesignSupplyC < supply))
      faults.add(
        at('facilityDesignSupply'),
        `expected less than supplySetPoint (${supply} °C): heat goes from warm to cold`,
      );
  }
}

function checkVacuumSource({ at, unit }: MergedUnit, faults: FaultList, warnings: FaultList): void {
  const source = unit.vacuumSource;
  if (source === undefined) return;
  const seal = siOrNull(source.sealWaterTemperature, 'temperature');
  if (seal !== null && !(seal > 0 && seal < 80))
    faults.add(at('vacuumSource', 'sealWaterTemperature'), 'expected liquid seal water, between 0 °C and 80 °C');
  const flows = ['vacuum.exhaustFlow', 'vacuum.bleedFlow'];
  if (source.control === 'constant' && !flows.some((id) => unit.points?.[id] !== undefined))
    warnings.add(
      at('vacuumSource', 'control'),
      `a source at constant speed always runs: without ${flows.join(' or ')} the gas load stays unknown`,
    );
}
