import type { UnitInFile } from '@ebbline/shared/contract/site-file-unit';
import type { PlateInFile } from '@ebbline/shared/contract/site-file-parts';
import { circleArea } from '@ebbline/shared/hydraulics/velocity';
import type { Mains, PermissibleVelocity, PlateChannel, UnitPipes } from './compiled-pipes';
import type { CompiledBranch, CompiledPlate } from './compiled-unit';
import { siOr, siOrNull } from './read-quantities';

/** Inner wall of drawn copper or stainless steel tube, m: White, Fluid Mechanics, table 6.1 (from memory). */
const drawnTubeRoughnessM = 1.5e-6;

/** What a unit says of its pipes, plates and chips. */
export const compilePipes = (unit: UnitInFile): UnitPipes => ({
  plateFullPowerW: siOrNull(unit.plateFullPower, 'power'),
  chipAreaM2: siOrNull(unit.chipArea, 'area'),
  plateChannel: compilePlateChannel(unit),
  mains: compileMains(unit),
  permissibleVelocity: compilePermissibleVelocity(unit),
});

/** Mains as pipes; null where the file gives no bore. */
function compileMains({ mains }: UnitInFile): Mains | null {
  const boreM = siOrNull(mains?.bore, 'length');
  if (boreM === null) return null;
  return {
    boreM,
    lengthM: siOrNull(mains?.length, 'length'),
    roughnessM: siOr(mains?.roughness, 'length', drawnTubeRoughnessM),
  };
}

/** By what velocities are judged: a figure wins over a table. */
function compilePermissibleVelocity({ permissibleVelocity }: UnitInFile): PermissibleVelocity | null {
  const limitMPerS = siOrNull(permissibleVelocity?.limit, 'velocity');
  if (limitMPerS !== null) return { limitMPerS };
  return permissibleVelocity?.table === undefined ? null : { table: permissibleVelocity.table };
}

function compilePlateChannel({ plateChannel, plateWallResistance }: UnitInFile): PlateChannel | null {
  const ratedFlowM3PerS = siOrNull(plateChannel?.ratedFlow, 'volumeFlow');
  if (ratedFlowM3PerS === null) return null;
  const widthM = siOrNull(plateChannel?.width, 'length');
  const heightM = siOrNull(plateChannel?.height, 'length');
  const count = plateChannel?.count;
  return {
    ratedFlowM3PerS,
    wettedAreaM2: siOrNull(plateChannel?.wettedArea, 'area'),
    wallResistanceKPerW: siOrNull(plateChannel?.wallResistance ?? plateWallResistance, 'thermalResistance'),
    channel: widthM === null || heightM === null || count === undefined ? null : { widthM, heightM, count },
  };
}

/** Cross-section of a branch's manifold: its own, or the fittings' of all branches. */
export function manifoldAreaOf(unit: UnitInFile, branch: string): Pick<CompiledBranch, 'manifoldAreaM2'> {
  for (const keys of [unit.branches?.[branch], unit.fittings]) {
    const area = siOrNull(keys?.manifoldArea, 'area');
    if (area !== null) return { manifoldAreaM2: area };
    const bore = siOrNull(keys?.manifoldBore, 'length');
    if (bore !== null) return { manifoldAreaM2: circleArea(bore) };
  }
  return {};
}

/** What one plate says otherwise than its unit. */
export function chipOf(plate: PlateInFile | null | undefined): Pick<CompiledPlate, 'fullPowerW' | 'chipAreaM2'> {
  const fullPowerW = siOrNull(plate?.fullPower, 'power');
  const chipAreaM2 = siOrNull(plate?.chipArea, 'area');
  return { ...(fullPowerW === null ? {} : { fullPowerW }), ...(chipAreaM2 === null ? {} : { chipAreaM2 }) };
}
