import type { Fluid } from '@ebbline/shared/fluid-properties/fluid';
import { metre, type Metre } from '@ebbline/shared/units/quantity';
import type { CompiledPlate, CompiledSite, CompiledUnit, Holder, WettedNode } from '../site/compiled-site';
import { Alike } from '../site/alike';
import { fluidOf } from '../site/compiled-fluid';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { gasMethodNames } from '../site/unit-parts';
import { nodePlan, type Anchor, type NodePlan } from './node-plan';
import { openHose } from './open-hose-of-site';
import { pipePlan, type PipePlan } from './pipe-plan';
import { plainPoints, type PlainPoint } from './plan-points';
import { transitPlan, type TransitPlan } from './transit-plan';
import type { OpenHose } from '@ebbline/shared/hydraulics/open-hose';

/** What `deriveUnit` needs of a unit each second, looked up once a site. −1 = the site has no such point. */
export interface UnitPlan {
  readonly unit: CompiledUnit;
  readonly unitIndex: number;
  readonly holder: Holder;
  readonly ambientSlot: number;
  readonly dewPointSlot: number;
  readonly slot: Readonly<Record<PlainPoint, number>>;
  readonly hallTemperatureSlot: number;
  readonly branchHeatSlot: readonly number[];
  readonly branchShareSlot: readonly number[];
  readonly branchMarginSlot: readonly number[];
  readonly plateResistanceSlot: readonly number[];
  readonly plateRatioSlot: readonly number[];
  /** Of every unit on the same water path, this one with them: slots of the water in its tanks, and of what they gain. */
  readonly loopVolumeSlots: readonly number[];
  readonly loopRateSlots: readonly number[];
  /** The same of the water that their gas carries out; −1 where one has no such point. */
  readonly loopLossSlots: readonly number[];
  /** Each of them counts its top-up, and knows what its gas carries out. */
  readonly loopWaterCounted: boolean;
  /** All water of those units as far as it is stated, m³. */
  readonly loopWaterM3: number;
  readonly loopUnits: readonly number[];
  /** Another unit is on the same water path. */
  readonly sharesLoop: boolean;
  /** Tanks that the file lists one by one, where each has an area and a level. */
  readonly tankVolumes: readonly { readonly areaM2: number; readonly slot: number; readonly fillingSlot: number }[];
  /** Places of the holder that say how a gas flow was found, by `GasMethod`; −1 where the holder has none. */
  readonly gasMethodPlaces: readonly number[];
  /** One open hose of this site; null where no bore is stated. */
  readonly hose: OpenHose | null;
  /** Supply tank with its surface, or else the supply sensor; null: pressures of the supply main can't be known. */
  readonly supplyAnchor: Anchor | null;
  /** Separator with the return's inlet, or else the return sensor. */
  readonly returnAnchor: Anchor | null;
  readonly hasSupplyNodes: boolean;
  /** Greatest loss of a node on the supply main at rated flow. */
  readonly supplyLossPa: number;
  readonly hasReturnNodes: boolean;
  /** False where no node has a loss: then the pressures do not depend on flow. */
  readonly nodesNeedFlow: boolean;
  /** All plates' powers, or all branches'; empty where neither set is complete. */
  readonly chipPowerSlots: readonly number[];
  /** The water's way between the sensors; null where its volume is not stated. */
  readonly transit: TransitPlan | null;
  /** What flows in the loop, and on the facility side of the exchanger. */
  readonly fluid: Fluid;
  readonly facilityFluid: Fluid;
  readonly pipes: PipePlan;
  /** The wetted nodes as columns. */
  readonly nodes: NodePlan;
  /** Plates whose wall is judged, with the elevation and the loss on the return main that stand for them. */
  readonly plateWalls: readonly PlateWall[];
}

export interface PlateWall {
  readonly plate: CompiledPlate;
  readonly elevationM: Metre;
  readonly returnLossPa: number;
}

const plansOfSite = new WeakMap<CompiledSite, readonly UnitPlan[]>();

/** The plan of a unit; made for the whole site on the first call, as a compiled site never changes. */
export function unitPlan(site: CompiledSite, unitIndex: number): UnitPlan {
  let plans = plansOfSite.get(site);
  if (plans === undefined) {
    const alike = new Alike();
    plans = site.units.map((unit, i) => makePlan(site, unit, i, alike));
    plansOfSite.set(site, plans);
  }
  const plan = plans[unitIndex];
  if (plan === undefined)
    throw new CodedError('DERIVE_UNKNOWN_UNIT', `the site has ${plans.length} units, none with index ${unitIndex}`);
  return plan;
}

function makePlan(site: CompiledSite, unit: CompiledUnit, unitIndex: number, alike: Alike): UnitPlan {
  const holder = site.holders[unit.holder];
  const hall = site.halls[unit.hall];
  if (holder === undefined || hall === undefined) {
    throw new CodedError('DERIVE_BROKEN_SITE', `unit ${unit.id} names a holder or a hall that the compiled site lacks`);
  }
  const slotOf = (id: string): number => holder.slotOf.get(id) ?? -1;
  const slot = Object.fromEntries(plainPoints.map((id) => [id, slotOf(id)])) as Record<PlainPoint, number>;
  const { design } = unit;
  const supplyAnchor = firstAnchor(
    [slot['supplyTank.pressure'], design.supplyTankSurfaceM],
    [slot['supply.pressure'], design.supplySensorM],
  );
  const returnAnchor = firstAnchor(
    [slot['separator.pressure'], design.returnInletM],
    [slot['return.pressure'], design.returnSensorM],
  );
  const ofBranches = (rest: string): readonly number[] => unit.branches.map(({ id }) => slotOf(`branch.${id}.${rest}`));
  const ofPlates = (rest: string): readonly number[] => unit.plates.map(({ id }) => slotOf(`plate.${id}.${rest}`));
  return {
    unit,
    unitIndex,
    holder,
    ambientSlot: hall.slot.ambientPressure,
    dewPointSlot: hall.slot.dewPoint,
    slot,
    hallTemperatureSlot: hall.slot.temperature,
    branchHeatSlot: ofBranches('heatRemoved'),
    branchShareSlot: ofBranches('flowShare'),
    branchMarginSlot: ofBranches('vacuumMargin'),
    plateResistanceSlot: ofPlates('resistance'),
    plateRatioSlot: ofPlates('resistanceRatio'),
    loopUnits: site.loops[unit.loop]?.units ?? [unitIndex],
    sharesLoop: (site.loops[unit.loop]?.units.length ?? 1) > 1,
    loopVolumeSlots: ofLoop(site, unit, unitIndex, () => ['waterVolume']),
    loopRateSlots: ofLoop(site, unit, unitIndex, gainingTanks),
    loopLossSlots: ofLoop(site, unit, unitIndex, losses),
    loopWaterCounted: [
      ...ofLoop(site, unit, unitIndex, losses),
      ...ofLoop(site, unit, unitIndex, () => ['topUp.volume']),
    ].every((slot) => slot >= 0),
    loopWaterM3: (site.loops[unit.loop]?.units ?? [unitIndex]).reduce(
      (sum, mate) => sum + (site.units[mate]?.design.volumes.waterM3 ?? 0),
      0,
    ),
    supplyLossPa: Math.max(
      0,
      ...unit.nodes.filter(({ main }) => main === 'supply').map((one) => one.lossAtRatedFlowPa),
    ),
    tankVolumes: tankVolumes(unit),
    gasMethodPlaces: alike.once(gasMethodNames.map((name) => holder.places.indexOf(name))),
    hose: alike.once(openHose(unit)),
    supplyAnchor,
    returnAnchor,
    transit: alike.once(transitPlan(design, fluidOf(unit.fluid))),
    fluid: fluidOf(unit.fluid),
    facilityFluid: fluidOf(unit.facilityFluid),
    pipes: pipePlan(unit, slotOf),
    nodes: nodePlan(unit, supplyAnchor, returnAnchor, slotOf, alike),
    hasSupplyNodes: unit.nodes.some((node) => node.main === 'supply'),
    hasReturnNodes: unit.nodes.some((node) => node.main === 'return'),
    nodesNeedFlow: unit.nodes.some((node) => node.lossAtRatedFlowPa !== 0),
    chipPowerSlots: chipPowerSlots(unit),
    plateWalls: plateWalls(unit),
  };
}

function firstAnchor(...candidates: readonly (readonly [slot: number, elevation: number | null])[]): Anchor | null {
  for (const [slot, elevation] of candidates)
    if (slot >= 0 && elevation !== null) return { slot, elevationM: metre(elevation) };
  return null;
}

/** A sum is worth something only when it is complete: none where one tank lacks its area or its level. */
function tankVolumes({ tanks }: CompiledUnit): UnitPlan['tankVolumes'] {
  const known = tanks.flatMap(({ areaM2, slot }) =>
    areaM2 === null || slot.level < 0 ? [] : [{ areaM2, slot: slot.level, fillingSlot: slot.filling }],
  );
  return known.length === tanks.length ? known : [];
}

function ofLoop(
  site: CompiledSite,
  unit: CompiledUnit,
  unitIndex: number,
  points: (mate: CompiledUnit, has: (id: string) => boolean) => readonly string[],
): readonly number[] {
  return (site.loops[unit.loop]?.units ?? [unitIndex]).flatMap((index) => {
    const mate = site.units[index];
    const slots = site.holders[mate?.holder ?? -1]?.slotOf;
    if (mate === undefined || slots === undefined) return [-1];
    return points(mate, (id) => slots.has(id)).map((id) => slots.get(id) ?? -1);
  });
}

const losses = (): readonly string[] => ['exhaustWaterLoss'];

/** Tanks that a plant shape has: the reservoir alone in c, and in b the separator only where there is one beside the tanks. */
function gainingTanks({ shape }: CompiledUnit, has: (id: string) => boolean): readonly string[] {
  if (shape === 'c') return ['separatorRate'];
  if (shape === 'b' && !has('separator.level')) return ['supplyTankRate'];
  return ['supplyTankRate', 'separatorRate'];
}

/**
 * Which powers make the chip power of a unit. A sum is worth something only when it is complete: so the
 * branches' powers where every branch has a power sensor (a site may list a few plates of thousands, but lists
 * every branch), else the plates' powers where every plate has one, else none. The site file chooses by what it lists.
 */
function chipPowerSlots(unit: CompiledUnit): readonly number[] {
  const branches = unit.branches.map((branch) => branch.slot.power);
  if (branches.length > 0 && branches.every((slot) => slot >= 0)) return branches;
  const plates = unit.plates.map((plate) => plate.slot.power);
  return plates.every((slot) => slot >= 0) ? plates : [];
}

/**
 * A plate stands upstream of the return main, so the main's pressure at the plate's elevation bounds the
 * plate's own from below. The loss is that of the return node nearest in elevation; a plate without a stated
 * elevation counts as being at the highest return node.
 */
function plateWalls(unit: CompiledUnit): readonly PlateWall[] {
  const returns = unit.nodes.filter((node) => node.main === 'return');
  const highest = returns.reduce<WettedNode | null>(
    (top, node) => (top === null || node.elevationM > top.elevationM ? node : top),
    null,
  );
  if (unit.design.plateWallResistanceKPerW === null || highest === null) return [];
  return unit.plates
    .filter((plate) => plate.slot.power >= 0)
    .map((plate) => {
      const elevation = plate.elevationM ?? highest.elevationM;
      const nearest = returns.reduce(
        (best, node) => (distance(node, elevation) < distance(best, elevation) ? node : best),
        highest,
      );
      return { plate, elevationM: metre(elevation), returnLossPa: nearest.lossAtRatedFlowPa };
    });
}

const distance = (node: WettedNode, elevation: number): number => Math.abs(node.elevationM - elevation);
