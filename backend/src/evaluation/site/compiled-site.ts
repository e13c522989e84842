/**
 * The site file, compiled once. Everything the hot path needs stands in typed arrays by slot;
 * the objects are for the edge and for what runs once a unit and second.
 */
export interface CompiledSite {
  readonly id: string;
  readonly name: string;
  readonly timeZone: string;
  readonly altitudeM: number;
  readonly demo: boolean;
  readonly maximumPayloadBytes: number;
  /** A source time further ahead of the arrival is refused (wall clock). */
  readonly futureToleranceMs: number;
  /** A source time further back than this is refused. */
  readonly oldestSampleMs: number;
  /** Halls first, then units: whoever holds points. A holder's index is its place here. */
  readonly holders: readonly Holder[];
  readonly halls: readonly CompiledHall[];
  readonly units: readonly CompiledUnit[];
  readonly gateways: readonly CompiledGateway[];
  readonly slots: SlotTable;
  /** Exact topic → what its payload carries. */
  readonly topics: ReadonlyMap<string, TopicPlan>;
  /** Topic filters to subscribe to (the topics themselves, or shorter filters the site file gives). */
  readonly subscriptions: readonly string[];
}

/** A hall or a unit. Its slots are contiguous: firstSlot … firstSlot + slotCount − 1. */
export interface Holder {
  readonly id: string;
  readonly kind: 'hall' | 'unit';
  readonly firstSlot: number;
  readonly slotCount: number;
  /** Point id → slot, own points only. */
  readonly slotOf: ReadonlyMap<string, number>;
  /** Names that `SlotState.where` points into: nodes, branches, plates, the pump's inlet. */
  readonly places: readonly string[];
}

/** Columns by slot. */
export interface SlotTable {
  readonly count: number;
  readonly pointId: readonly string[];
  readonly unitOfMeasure: readonly string[];
  /** Index into `holders`. */
  readonly holder: Int32Array;
  /** 1 = measured, 0 = derived. */
  readonly measured: Uint8Array;
  /** SI = payload number × factor + offset. */
  readonly factor: Float64Array;
  readonly offset: Float64Array;
  /** How a pressure is told: then ambient is added (gauge) or the number is taken from ambient (vacuum). */
  readonly reference: Uint8Array; // Reference
  /** Valid range, SI, in the point's own reference (that of a gauge sensor is gauge); ±Infinity where none. */
  readonly minimum: Float64Array;
  readonly maximum: Float64Array;
  /** Fastest believable change, SI per s; Infinity where none. */
  readonly jumpPerS: Float64Array;
  /** Expected period, ms; stale after max(3 periods, 5 s). */
  readonly periodMs: Float64Array;
  /** Stuck after so long without any change, ms; Infinity where unchanging is normal. */
  readonly stuckMs: Float64Array;
  /** Accuracy as half-widths: absolute in SI, and relative to the reading; NaN where not stated. */
  readonly accuracyAbsolute: Float64Array;
  readonly accuracyRelative: Float64Array;
}

export const Reference = { none: 0, absolute: 1, gauge: 2, vacuum: 3 } as const;

/** What one topic carries. */
export interface TopicPlan {
  readonly topic: string;
  readonly format: 'number' | 'json' | 'status';
  /** For `status`: which gateway, and which payload means that it is there. */
  readonly status: {
    readonly gateway: number;
    readonly online: string;
    readonly path: readonly string[] | null;
  } | null;
  readonly timePath: readonly string[] | null;
  readonly timeForm: 'iso' | 'epochSeconds' | 'epochMilliseconds' | null;
  readonly bindings: readonly PointBinding[];
}

export interface PointBinding {
  readonly slot: number;
  /** Where the value stands in the JSON object; empty for a bare number. */
  readonly path: readonly string[];
  /** Where the sender's quality stands, and the values that mean good; null where it sends none. */
  readonly qualityPath: readonly string[] | null;
  readonly qualityGood: readonly (string | number | boolean)[];
  /** Words that a sender uses for numbers: modes, yes and no. */
  readonly words: ReadonlyMap<string, number> | null;
}

export interface CompiledHall {
  readonly id: string;
  readonly name: string;
  readonly holder: number;
  /** Indices into `units`. */
  readonly units: readonly number[];
  readonly slot: {
    readonly ambientPressure: number;
    readonly temperature: number;
    readonly humidity: number;
    readonly dewPoint: number;
  };
}

export interface CompiledGateway {
  readonly id: string;
  /** Indices into `units`. */
  readonly units: readonly number[];
  /** Every measured slot that arrives through it. */
  readonly slots: Int32Array;
}

export type PlantShape = 'a' | 'b' | 'c';

export interface CompiledUnit {
  readonly id: string;
  readonly name: string;
  readonly hall: number;
  readonly holder: number;
  readonly gateway: number;
  readonly shape: PlantShape;
  /** Which meter position `loop.flow` has: density is taken at that temperature, and a cut reads differently. */
  readonly flowMeterSide: 'supply' | 'return';
  readonly design: UnitDesign;
  readonly nodes: readonly WettedNode[];
  readonly branches: readonly CompiledBranch[];
  readonly plates: readonly CompiledPlate[];
  /** Index into the holder's `places` of the wall that the pump's inlet is. */
  readonly pumpInletPlace: number;
  readonly vacuumSource: VacuumSource | null;
  readonly limits: ReadonlyMap<string, EntryLimits>;
}

/** Numbers of the unit that no sensor gives; all SI, from the site file. */
export interface UnitDesign {
  readonly ratedFlowM3PerS: number;
  readonly ratedHeatW: number | null;
  readonly supplySetPointC: number | null;
  /** Elevations, m above the hall's floor datum. */
  readonly supplyTankSurfaceM: number | null;
  readonly separatorSurfaceM: number | null;
  /** Where the return enters the separator: the return column ends here. */
  readonly returnInletM: number | null;
  readonly pumpInletM: number | null;
  readonly supplySensorM: number | null;
  readonly returnSensorM: number | null;
  readonly npshLimitM: number | null;
  /** Loss from the separator to the pump's inlet at rated flow, Pa. */
  readonly pumpSuctionLossPa: number;
  /** Case-to-inlet resistance minus case-to-wall gives the wall; null: no plate wall is judged. */
  readonly plateWallResistanceKPerW: number | null;
  readonly elevationAccuracyM: number;
  readonly separatorAreaM2: number | null;
  readonly supplyTankAreaM2: number | null;
  /** Bore of one server hose's outlet, m: what "one open hose" means here. */
  readonly hoseBoreM: number | null;
}

/** A wetted place outside the unit, on one of the mains. */
export interface WettedNode {
  readonly id: string;
  readonly name: string;
  readonly main: 'supply' | 'return';
  readonly elevationM: number;
  /** Loss between the anchor (supply tank, or separator) and here at rated flow, Pa; scales with flow². */
  readonly lossAtRatedFlowPa: number;
  /** Index into the holder's `places`. */
  readonly place: number;
}

export interface CompiledBranch {
  readonly id: string;
  readonly name: string;
  readonly ratedFlowM3PerS: number | null;
  readonly place: number;
  /** −1 where there is no such sensor. */
  readonly slot: {
    readonly flow: number;
    readonly returnTemperature: number;
    readonly returnPressure: number;
    readonly power: number;
  };
}

export interface CompiledPlate {
  readonly id: string;
  readonly name: string;
  /** Index into `branches`; −1 = none. */
  readonly branch: number;
  readonly place: number;
  readonly elevationM: number | null;
  readonly slot: { readonly temperature: number; readonly power: number };
}

/** Suction of one source by pressure at its seal temperature, S(p), m³/s; linear between rows. */
export interface VacuumSource {
  readonly count: number;
  readonly pressurePa: readonly number[];
  readonly suctionM3PerS: readonly number[];
}

/** What the site file may change of a catalogue entry, SI; undefined keys keep the catalogue's default. */
export interface EntryLimits {
  readonly limit?: number;
  readonly deadband?: number;
  readonly onDelayMs?: number;
  readonly offDelayMs?: number;
  readonly enabled?: boolean;
  readonly action?: string;
}
