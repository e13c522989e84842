import { metre, type Metre } from '@ebbline/shared/units/quantity';
import type { CompiledPlate, CompiledSite, CompiledUnit, Holder, WettedNode } from '../site/compiled-site';
import { CodedError } from '@ebbline/shared/errors/coded-error';

/** A measured pressure at a known elevation, from which the pressures along one main are worked out. */
export interface Anchor {
  readonly slot: number;
  readonly elevationM: Metre;
}

/** What `deriveUnit` needs of a unit each second, looked up once a site. −1 = the site has no such point. */
export interface UnitPlan {
  readonly unit: CompiledUnit;
  readonly holder: Holder;
  readonly ambientSlot: number;
  readonly dewPointSlot: number;
  readonly slot: Readonly<Record<PlainPoint, number>>;
  readonly branchHeatSlot: readonly number[];
  /** Supply tank with its surface, or else the supply sensor; null: pressures of the supply main can't be known. */
  readonly supplyAnchor: Anchor | null;
  /** Separator with the return's inlet, or else the return sensor. */
  readonly returnAnchor: Anchor | null;
  readonly hasSupplyNodes: boolean;
  readonly hasReturnNodes: boolean;
  /** False where no node has a loss: then the pressures do not depend on flow. */
  readonly nodesNeedFlow: boolean;
  /** All plates' powers, or all branches'; empty where neither set is complete. */
  readonly chipPowerSlots: readonly number[];
  /** Plates whose wall is judged, with the elevation and the loss on the return main that stand for them. */
  readonly plateWalls: readonly PlateWall[];
}

export interface PlateWall {
  readonly plate: CompiledPlate;
  readonly elevationM: Metre;
  readonly returnLossPa: number;
}

const plainPoints = [
  'supply.temperature',
  'return.temperature',
  'facility.supply.temperature',
  'supply.pressure',
  'return.pressure',
  'supplyTank.pressure',
  'separator.pressure',
  'pump.inlet.pressure',
  'loop.flow',
  'vacuum.exhaustFlow',
  'vacuum.speed',
  'vacuum.running',
  'massFlow',
  'heatRemoved',
  'chipPower',
  'capture',
  'approach',
  'vacuumMargin',
  'vacuumMarginWorst',
  'boilingMargin',
  'lowerWallMargin',
  'drivingPressure',
  'gasLoad',
  'dewPointMargin',
] as const;
type PlainPoint = (typeof plainPoints)[number];

const plansOfSite = new WeakMap<CompiledSite, readonly UnitPlan[]>();

/** The plan of a unit; made for the whole site on the first call, as a compiled site never changes. */
export function unitPlan(site: CompiledSite, unitIndex: number): UnitPlan {
  let plans = plansOfSite.get(site);
  if (plans === undefined) {
    plans = site.units.map((unit) => makePlan(site, unit));
    plansOfSite.set(site, plans);
  }
  const plan = plans[unitIndex];
  if (plan === undefined)
    throw new CodedError('DERIVE_UNKNOWN_UNIT', `the site has ${plans.length} units, none with index ${unitIndex}`);
  return plan;
}

function makePlan(site: CompiledSite, unit: CompiledUnit): UnitPlan {
  const holder = site.holders[unit.holder];
  const hall = site.halls[unit.hall];
  if (holder === undefined || hall === undefined) {
    throw new CodedError('DERIVE_BROKEN_SITE', `unit ${unit.id} names a holder or a hall that the compiled site lacks`);
  }
  const slotOf = (id: string): number => holder.slotOf.get(id) ?? -1;
  const slot = Object.fromEntries(plainPoints.map((id) => [id, slotOf(id)])) as Record<PlainPoint, number>;
  const { design } = unit;
  return {
    unit,
    holder,
    ambientSlot: hall.slot.ambientPressure,
    dewPointSlot: hall.slot.dewPoint,
    slot,
    branchHeatSlot: unit.branches.map((branch) => slotOf(`branch.${branch.id}.heatRemoved`)),
    supplyAnchor: firstAnchor(
      [slot['supplyTank.pressure'], design.supplyTankSurfaceM],
      [slot['supply.pressure'], design.supplySensorM],
    ),
    returnAnchor: firstAnchor(
      [slot['separator.pressure'], design.returnInletM],
      [slot['return.pressure'], design.returnSensorM],
    ),
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
