import type { CompiledUnit } from './compiled-unit';

export type {
  Commissioned,
  CompiledBranch,
  CompiledPlate,
  CompiledServer,
  CompiledTank,
  CompiledUnit,
  EntryLimits,
  FanPath,
  HoseFittings,
  PlantShape,
  UnitDesign,
  UnitVolumes,
  VacuumSource,
  WettedNode,
} from './compiled-unit';

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
  /** Water paths. A unit that the file puts on no loop is alone on one of its own, with its own id. */
  readonly loops: readonly CompiledLoop[];
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
  /** Where its values come from: `Origin`. */
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
  /** What certificates state beside, as standard uncertainties; NaN where neither is stated. */
  readonly accuracyNormalAbsolute: Float64Array;
  readonly accuracyNormalRelative: Float64Array;
}

/** derived: worked out; measured: sent by the site; byHand: typed by people, never stale but due again. */
export const Origin = { derived: 0, measured: 1, byHand: 2 } as const;

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

/** One water path and the units on it (N+1): water may walk between their tanks. */
export interface CompiledLoop {
  readonly id: string;
  readonly name: string;
  /** Indices into `units`. */
  readonly units: readonly number[];
  /** Units that the loop needs at rated load; the rest is redundancy. */
  readonly unitsNeeded: number;
}

export interface CompiledGateway {
  readonly id: string;
  /** Indices into `units`. */
  readonly units: readonly number[];
  /** Every measured slot that arrives through it. */
  readonly slots: Int32Array;
}
