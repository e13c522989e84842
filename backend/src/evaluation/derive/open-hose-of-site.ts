import type { OpenHose } from '@ebbline/shared/hydraulics/open-hose';
import type { CompiledUnit, HoseFittings } from '../site/compiled-site';

/**
 * What "one open hose" is at this unit: its outlet bore, and the restrictor at the inlet where no check valve shuts it. Of
 * branches that differ, the one that lets most air in. Null where no bore is stated.
 */
export function openHose({ design, branches }: CompiledUnit): OpenHose | null {
  const fittings = branches.map((branch) => branch.fittings);
  const outlet = Math.max(0, ...fittings.map((one) => one.outletBoreM ?? design.hoseBoreM ?? 0), design.hoseBoreM ?? 0);
  if (outlet === 0) return null;
  return {
    outletBoreM: outlet,
    inletBoreM: Math.max(0, ...fittings.map(inletBore)),
    dischargeCoefficient: design.openingDischargeCoefficient,
  };
}

/** A restrictor only slows the air; the check valve alone stops it. Nothing is taken where the file states neither. */
const inletBore = ({ inletCheckValve, restrictorBoreM }: HoseFittings): number =>
  inletCheckValve ? 0 : (restrictorBoreM ?? 0);
