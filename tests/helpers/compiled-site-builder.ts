import { derivedPointIds } from '../../backend/src/evaluation/derive/derived-point-ids';
import {
  type CompiledBranch,
  type CompiledPlate,
  type CompiledSite,
  type CompiledUnit,
  type EntryLimits,
  type HoseFittings,
  type Holder,
  type UnitDesign,
  type VacuumSource,
  type WettedNode,
} from '../../backend/src/evaluation/site/compiled-site';
import type { CompiledWater } from '../../backend/src/evaluation/site/compiled-water';
import { createSlotState, type SlotState } from '../../backend/src/evaluation/slots/slot-state';
import { designOfUnitM, nodesOfUnitM } from './unit-m';
import { slotTable } from './slot-table-of-built-site';
import { waterNotStated, waterOf } from './water-of-built-site';

export { runUnitM } from './unit-m';

/** A small site made by hand: one hall, one unit shaped like unit M of the demo plant. For tests of the stages behind the site file. */
export interface SiteOptions {
  readonly altitudeM?: number;
  readonly shape?: CompiledUnit['shape'];
  readonly flowMeterSide?: CompiledUnit['flowMeterSide'];
  readonly fluids?: Pick<CompiledUnit, 'fluid' | 'facilityFluid'>;
  readonly design?: Partial<UnitDesign>;
  readonly nodes?: readonly WettedNode[];
  readonly branches?: readonly string[];
  readonly plates?: readonly { readonly id: string; readonly branch: number; readonly elevationM: number | null }[];
  readonly vacuumSource?: VacuumSource | null;
  readonly limits?: ReadonlyMap<string, EntryLimits>;
  readonly water?: Partial<CompiledWater>;
  readonly fittings?: HoseFittings;
  /** What every branch has besides. */
  readonly branchParts?: Pick<CompiledBranch, 'manifoldAreaM2' | 'commissioned'>;
  readonly tanks?: readonly { readonly id: string; readonly areaM2: number | null }[];
  /** Measured points of the unit besides the usual ones. */
  readonly also?: readonly string[];
  /** Measured points that the site has not. */
  readonly without?: readonly string[];
  /** Pressures told against ambient. */
  readonly gauge?: readonly string[];
  /** Accuracies as half-widths, [absolute, relative]; NaN = not stated. Replaces the default of that point. */
  readonly accuracy?: Readonly<Record<string, readonly [absolute: number, relative: number]>>;
  /** Standard uncertainty of a normal part, in place of everything else that is stated of the point. */
  readonly normal?: Readonly<Record<string, number>>;
  readonly matchedPairs?: readonly (readonly [one: string, other: string, correlation: number])[];
}

export interface BuiltSite {
  readonly site: CompiledSite;
  readonly state: SlotState;
  /** Slot of a point of the unit or of the hall. */
  slot(point: string): number;
  /** Writes a measured value as a good sample of the time `atMs`. */
  set(point: string, value: number, atMs?: number): void;
  /** Puts reasons on a point (bits of `reasonBit`). */
  mark(point: string, reasons: number): void;
  value(point: string): number;
  reasons(point: string): number;
  expandedUncertainty(point: string): number;
  /** Name of the place that decides the value; null where none does. */
  where(point: string): string | null;
}

const measuredOfUnit = [
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
  'pump.running',
  'pump.speed',
  'separator.level',
  'supplyTank.level',
  'water.found',
  'mode',
];

export function buildSite(options: SiteOptions = {}): BuiltSite {
  const without = new Set(options.without ?? ['pump.inlet.pressure', 'supply.pressure', 'return.pressure']);
  const nodes = options.nodes ?? nodesOfUnitM;
  const branchIds = options.branches ?? ['r1', 'r2'];
  const plates = options.plates ?? [];
  const tanks = options.tanks ?? [];

  const hallPoints = ['ambient.pressure', 'hall.temperature', 'hall.humidity', ...derivedPointIds.hall].filter(
    (id) => !without.has(id),
  );
  const unitPoints = [
    ...measuredOfUnit,
    ...(options.also ?? []),
    ...tanks.map(({ id }) => `tank.${id}.level`),
    ...branchIds.flatMap((id) =>
      ['flow', 'return.temperature', 'return.pressure', 'power'].map((rest) => `branch.${id}.${rest}`),
    ),
    ...plates.flatMap(({ id }) => [`plate.${id}.temperature`, `plate.${id}.power`]),
    ...derivedPointIds.unit.flatMap((id) =>
      id.startsWith('branch.')
        ? branchIds.map((branch) => id.replace('<id>', branch))
        : id.startsWith('plate.')
          ? plates.map((plate) => id.replace('<id>', plate.id))
          : id.startsWith('node.')
            ? nodes.map((node) => id.replace('<id>', node.id))
            : [id],
    ),
  ].filter((id) => !without.has(id));

  const places = [
    ...nodes.map((node) => node.name),
    ...branchIds.map((id) => `Rack ${id}`),
    ...plates.map(({ id }) => `Plate ${id}`),
    'pump inlet',
  ];
  const holders: readonly Holder[] = [
    holder('hall1', 'hall', 0, hallPoints, []),
    holder('m1', 'unit', hallPoints.length, unitPoints, places),
  ];
  const [hall, unit] = holders as readonly [Holder, Holder];
  const slotOf = (id: string): number => unit.slotOf.get(id) ?? hall.slotOf.get(id) ?? -1;
  const ids = [...hallPoints, ...unitPoints];
  const state = createSlotState(ids.length);

  const site: CompiledSite = {
    id: 'test',
    name: 'Test site',
    timeZone: 'UTC',
    altitudeM: options.altitudeM ?? 0,
    demo: false,
    maximumPayloadBytes: 65_536,
    futureToleranceMs: 5_000,
    oldestSampleMs: 86_400_000,
    holders,
    halls: [
      {
        id: 'hall1',
        name: 'Hall 1',
        holder: 0,
        units: [0],
        slot: {
          ambientPressure: slotOf('ambient.pressure'),
          temperature: slotOf('hall.temperature'),
          humidity: slotOf('hall.humidity'),
          dewPoint: slotOf('dewPoint'),
        },
      },
    ],
    units: [
      {
        id: 'm1',
        name: 'Unit M1',
        hall: 0,
        holder: 1,
        gateway: 0,
        shape: options.shape ?? 'a',
        flowMeterSide: options.flowMeterSide ?? 'supply',
        ...options.fluids,
        loop: 0,
        design: { ...designOfUnitM, ...options.design },
        nodes,
        branches: branchIds.map((id, i) => ({
          id,
          name: `Rack ${id}`,
          ratedFlowM3PerS: 43 / 60_000,
          place: nodes.length + i,
          slot: {
            flow: slotOf(`branch.${id}.flow`),
            returnTemperature: slotOf(`branch.${id}.return.temperature`),
            returnPressure: slotOf(`branch.${id}.return.pressure`),
            power: slotOf(`branch.${id}.power`),
            isolated: slotOf(`branch.${id}.isolated`),
            waterFound: slotOf(`branch.${id}.water.found`),
          },
          mainBoreM: null,
          ...options.branchParts,
          fittings: options.fittings ?? { restrictorBoreM: null, outletBoreM: null, inletCheckValve: false },
        })),
        plates: plates.map(({ id, branch, elevationM }, i): CompiledPlate => ({
          id,
          name: `Plate ${id}`,
          branch,
          server: -1,
          place: nodes.length + branchIds.length + i,
          elevationM,
          fanPath: options.design?.fanPath ?? null,
          slot: { temperature: slotOf(`plate.${id}.temperature`), power: slotOf(`plate.${id}.power`) },
        })),
        servers: [],
        tanks: tanks.map(({ id, areaM2 }) => ({
          id,
          name: `Tank ${id}`,
          areaM2,
          place: -1,
          slot: { level: slotOf(`tank.${id}.level`), pressure: -1, filling: -1 },
        })),
        matchedPairs: (options.matchedPairs ?? []).map(([one, other, correlation]) => ({
          slot: slotOf(one),
          mate: slotOf(other),
          correlation,
        })),
        pumpInletPlace: places.length - 1,
        vacuumSource: options.vacuumSource ?? null,
        limits: options.limits ?? new Map(),
        water: { ...waterNotStated, parameters: waterOf(slotOf), ...options.water },
      },
    ],
    loops: [{ id: 'm1', name: 'Unit M1', units: [0], unitsNeeded: 1 }],
    gateways: [{ id: 'gateway1', units: [0], slots: Int32Array.from(ids.keys()) }],
    slots: slotTable(ids, hallPoints.length, options),
    topics: new Map(),
    subscriptions: [],
  };

  const slot = (point: string): number => {
    const found = slotOf(point);
    if (found < 0) throw new Error(`this site has no point ${point}`);
    return found;
  };
  return {
    site,
    state,
    slot,
    set(point, value, atMs = 0) {
      const at = slot(point);
      state.value[at] = value;
      state.sourceMs[at] = atMs;
      state.acceptedMs[at] = atMs;
      state.unchangedSinceMs[at] = atMs;
      state.reasons[at] = 0;
    },
    mark(point, reasons) {
      state.reasons[slot(point)] = reasons;
    },
    value: (point) => state.value[slot(point)] ?? Number.NaN,
    reasons: (point) => state.reasons[slot(point)] ?? -1,
    expandedUncertainty: (point) => state.expandedUncertainty[slot(point)] ?? Number.NaN,
    where: (point) => unit.places[state.where[slot(point)] ?? -1] ?? null,
  };
}

function holder(
  id: string,
  kind: Holder['kind'],
  firstSlot: number,
  points: readonly string[],
  places: readonly string[],
): Holder {
  return {
    id,
    kind,
    firstSlot,
    slotCount: points.length,
    slotOf: new Map(points.map((point, i) => [point, firstSlot + i])),
    places,
  };
}
