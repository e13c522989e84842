import type { UnitDesign } from './compiled-unit';
import type { MergedUnit } from './merge-templates';
import { siOrNull } from './read-quantities';
import type { FaultList } from './site-fault';

/** Whether what a unit says of pipes, plates and chips is possible. */
export function checkPipes({ unit, at }: MergedUnit, design: UnitDesign, faults: FaultList): void {
  const { mains, plateChannel } = design;
  const positive: (readonly [value: number | null | undefined, ...keys: readonly string[]])[] = [
    [mains?.boreM, 'mains', 'bore'],
    [mains?.lengthM, 'mains', 'length'],
    [design.plateFullPowerW, 'plateFullPower'],
    [design.chipAreaM2, 'chipArea'],
    [plateChannel?.ratedFlowM3PerS, 'plateChannel', 'ratedFlow'],
    [plateChannel?.wettedAreaM2, 'plateChannel', 'wettedArea'],
    [plateChannel?.wallResistanceKPerW, 'plateChannel', 'wallResistance'],
    [plateChannel?.channel?.widthM, 'plateChannel', 'width'],
    [plateChannel?.channel?.heightM, 'plateChannel', 'height'],
    [siOrNull(unit.permissibleVelocity?.limit, 'velocity'), 'permissibleVelocity', 'limit'],
    [siOrNull(unit.fittings?.manifoldBore, 'length'), 'fittings', 'manifoldBore'],
    [siOrNull(unit.fittings?.manifoldArea, 'area'), 'fittings', 'manifoldArea'],
    ...Object.entries(unit.branches ?? {}).flatMap(([id, branch]) => [
      [siOrNull(branch?.manifoldBore, 'length'), 'branches', id, 'manifoldBore'] as const,
      [siOrNull(branch?.manifoldArea, 'area'), 'branches', id, 'manifoldArea'] as const,
    ]),
    ...Object.entries(unit.plates ?? {}).flatMap(([id, plate]) => [
      [siOrNull(plate?.fullPower, 'power'), 'plates', id, 'fullPower'] as const,
      [siOrNull(plate?.chipArea, 'area'), 'plates', id, 'chipArea'] as const,
    ]),
  ];
  for (const [value, ...keys] of positive)
    if (typeof value === 'number' && !(value > 0)) faults.add(at(...keys), 'expected more than 0');
  if (mains !== null && !(mains.roughnessM >= 0 && mains.roughnessM <= 0.05 * mains.boreM))
    faults.add(at('mains', 'roughness'), 'expected 0 to a twentieth of the bore');
  if (unit.mains !== undefined && unit.mains.bore === undefined)
    faults.add(at('mains', 'bore'), 'is missing; give it, such as 82 mm, or take mains out');
  if (unit.plateChannel !== undefined && unit.plateChannel.ratedFlow === undefined)
    faults.add(at('plateChannel', 'ratedFlow'), 'is missing; give the water of one plate, such as 0.43 L/min');
  const { table, limit } = unit.permissibleVelocity ?? {};
  if (unit.permissibleVelocity !== undefined && (table === undefined) === (limit === undefined))
    faults.add(at('permissibleVelocity'), 'expected a table or a limit, one of both');
}
