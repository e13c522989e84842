import type { CompiledUnit } from '../site/compiled-site';
import {
  velocityTables,
  permissibleVelocity,
  type VelocityTable,
} from '@ebbline/shared/hydraulics/permissible-velocity';
import { circleArea, hydraulicDiameterOfRectangle } from '@ebbline/shared/hydraulics/velocity';

/** Slots and figures of pipes, plates and chips, looked up once a site. −1 = the site has no such point; NaN = not stated. */
export interface PipePlan {
  readonly manifoldVelocitySlot: readonly number[];
  readonly manifoldShareSlot: readonly number[];
  readonly branchRatioSlot: readonly number[];
  readonly fullPowerSlot: readonly number[];
  readonly heatFluxSlot: readonly number[];
  readonly filmSlot: readonly number[];
  readonly reynoldsSlot: readonly number[];
  /** By plate. */
  readonly fullPowerW: readonly number[];
  readonly chipAreaM2: readonly number[];
  readonly mainAreaM2: number;
  /** Of all channels of one plate together, and the hydraulic diameter of one. */
  readonly channelAreaM2: number;
  readonly channelDiameterM: number;
  /** Null where the site judges velocities by nothing. */
  readonly velocityLimit: VelocityLimit | null;
}

/** A maker's figure, or a table. */
export type VelocityLimit = number | VelocityTable;

export function pipePlan(unit: CompiledUnit, slotOf: (point: string) => number): PipePlan {
  const { branches, plates, design } = unit;
  const ofBranches = (rest: string): readonly number[] => branches.map(({ id }) => slotOf(`branch.${id}.${rest}`));
  const ofPlates = (rest: string): readonly number[] => plates.map(({ id }) => slotOf(`plate.${id}.${rest}`));
  const channel = design.plateChannel?.channel ?? null;
  return {
    manifoldVelocitySlot: ofBranches('manifoldVelocity'),
    manifoldShareSlot: ofBranches('manifoldVelocityShare'),
    branchRatioSlot: ofBranches('resistanceRatio'),
    fullPowerSlot: ofPlates('temperatureAtFullPower'),
    heatFluxSlot: ofPlates('heatFlux'),
    filmSlot: ofPlates('filmCoefficient'),
    reynoldsSlot: ofPlates('channelReynolds'),
    fullPowerW: plates.map((plate) => plate.fullPowerW ?? design.plateFullPowerW ?? Number.NaN),
    chipAreaM2: plates.map((plate) => plate.chipAreaM2 ?? design.chipAreaM2 ?? Number.NaN),
    mainAreaM2: design.mains === null ? Number.NaN : circleArea(design.mains.boreM),
    channelAreaM2: channel === null ? Number.NaN : channel.count * channel.widthM * channel.heightM,
    channelDiameterM: channel === null ? Number.NaN : hydraulicDiameterOfRectangle(channel.widthM, channel.heightM),
    velocityLimit: velocityLimit(unit),
  };
}

function velocityLimit({ design }: CompiledUnit): VelocityLimit | null {
  const by = design.permissibleVelocity;
  if (by === null) return null;
  return 'table' in by ? velocityTables[by.table] : by.limitMPerS;
}

/** What water of this temperature may do, m/s. */
export const permissibleAt = (limit: VelocityLimit, celsius: number): number =>
  typeof limit === 'number' ? limit : permissibleVelocity(limit, celsius);

/** By what a unit's velocities are judged, in words. */
export function velocityLimitSource({ design }: CompiledUnit): string {
  const by = design.permissibleVelocity;
  if (by === null) return 'none is chosen in the site file (permissibleVelocity)';
  if (!('table' in by)) return 'a figure of the site file (permissibleVelocity.limit)';
  const { material, source } = velocityTables[by.table];
  return `${material}, by ${source} (permissibleVelocity.table: ${by.table})`;
}
