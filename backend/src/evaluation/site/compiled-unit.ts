import type { CompiledFluid } from './compiled-fluid';
import type { CompiledWater } from './compiled-water';

import type { BranchLoss, CommissionedRecords, UnitPipes } from './compiled-pipes';

/** One unit, compiled once; numbers are SI, null where the site file does not say. */
export type PlantShape = 'a' | 'b' | 'c';

export interface CompiledUnit {
  readonly id: string;
  readonly name: string;
  readonly hall: number;
  readonly holder: number;
  readonly gateway: number;
  /** Index into `loops`. */
  readonly loop: number;
  readonly shape: PlantShape;
  /** What flows in the loop and on the facility side of the exchanger; left out: water. */
  readonly fluid?: CompiledFluid;
  readonly facilityFluid?: CompiledFluid;
  /** Which meter position `loop.flow` has: density is taken at that temperature, and a cut reads differently. */
  readonly flowMeterSide: 'supply' | 'return';
  readonly design: UnitDesign;
  readonly nodes: readonly WettedNode[];
  readonly branches: readonly CompiledBranch[];
  readonly servers: readonly CompiledServer[];
  readonly plates: readonly CompiledPlate[];
  /** Alternating tanks of shape b, or more tanks than the two of shape a; empty where the file lists none. */
  readonly tanks: readonly CompiledTank[];
  /** Index into the holder's `places` of the wall that the pump's inlet is. */
  readonly pumpInletPlace: number;
  readonly vacuumSource: VacuumSource | null;
  /** Thermometers whose errors go together, by a record of their common calibration. */
  readonly matchedPairs: readonly MatchedPair[];
  readonly limits: ReadonlyMap<string, EntryLimits>;
  /** Where each of them was said; left out, all of them of the unit itself. */
  readonly limitLevels?: LimitLevels;
  readonly water: CompiledWater;
}

/** Two slots and the correlation of their errors. */
export interface MatchedPair {
  readonly slot: number;
  readonly mate: number;
  readonly correlation: number;
}

/** Numbers of the unit that no sensor gives; all SI, from the site file. */
export interface UnitDesign extends UnitPipes {
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
  /** Discharge coefficient of an open hose: 0.6 sharp to 0.85 long hole (common practice, no source). */
  readonly openingDischargeCoefficient: number;
  readonly volumes: UnitVolumes;
  readonly transit: UnitTransit;
  readonly commissioned: Commissioned;
  /** What chips and water may reach. */
  readonly supplyClassLimitC: number | null;
  readonly plateLimitC: number | null;
  /** Facility water warmer than this can't hold the supply set point at rated heat. */
  readonly facilityDesignSupplyC: number | null;
  readonly filterRatingPa: number | null;
  /** Heat stored in one plate and its chip, J/K, and whether fans carry heat when the water stands. */
  readonly plateHeatCapacityJPerK: number | null;
  readonly fanPath: FanPath | null;
  readonly knownGood: KnownGood | null;
}

/** What changes are judged against: the first so many hours watched from this moment on. */
export interface KnownGood {
  readonly fromMs: number;
  readonly hours: number;
}

/** Cooling of a chip by its server's fans alone. */
export interface FanPath {
  /** Chip case to hall air with fans at full speed. */
  readonly resistanceKPerW: number;
}

/** m³; levels rise and fall in these. */
export interface UnitVolumes {
  /** Water on the way from supply to return sensor at usual filling: transit time = this ÷ flow. */
  readonly supplyToReturnM3: number | null;
  /** All water of the unit's share of the loop, tanks included: what a fill takes. */
  readonly waterM3: number | null;
  /** Room for gas in separator and receiver at the usual level. */
  readonly separatorGasM3: number | null;
  readonly supplyTankGasM3: number | null;
  /** Water that the supply tank may give off from its usual level until the loop starves. */
  readonly supplyTankUsableM3: number | null;
  /** Water that the separator can still take from its usual level. */
  readonly separatorRoomM3: number | null;
  /** Levels at which the above hold, m above each tank's own zero. */
  readonly supplyTankUsualLevelM: number | null;
  readonly separatorUsualLevelM: number | null;
}

/** What a change of temperature meets on its way from supply to return sensor besides the volume of water. */
export interface UnitTransit {
  /** Part of `supplyToReturnM3` behind the plates; null: half of it. */
  readonly platesToReturnM3: number | null;
  /** Heat that pipe walls, hoses, plates and chips take up per kelvin, J/K. */
  readonly storedHeatJPerK: number;
  /** Standard deviation of the arrival of a front, as a share of the transit. */
  readonly frontSpread: number;
  /** Time constant of a plate with its chip, s; null: heat capacity × resistance. */
  readonly plateLagS: number | null;
  /** Of the return sensor in its pocket, s. */
  readonly sensorLagS: number;
}

/** Figures that commissioning measured: who and when stand beside them in the site file. */
export interface Commissioned extends CommissionedRecords {
  readonly by: string | null;
  readonly on: string | null;
  /** Pressure lost from supply tank to separator at rated flow, with the exponent of flow. */
  readonly loopLossPa: number | null;
  readonly loopExponent: number;
  /** Clean filter's loss at rated flow, with its exponent. */
  readonly filterLossPa: number | null;
  readonly filterExponent: number;
  /** UA of the clean exchanger at these mass flows, kg/s; falls with flow^exponent on each side, in equal shares. */
  readonly uaWPerK: number | null;
  readonly uaLoopMassFlowKgPerS: number | null;
  readonly uaFacilityMassFlowKgPerS: number | null;
  readonly uaExponent: number;
  /** Gas load of the tight loop, dissolved air and permeation included, free m³/s. */
  readonly gasLoadM3PerS: number | null;
  readonly pumpEfficiency: number | null;
  /** Case-to-supply resistance of a plate at its rated flow, and how it falls with flow: a + b·(q/q₀)^−n. */
  readonly plateResistanceKPerW: number | null;
  readonly plateResistanceFixedKPerW: number;
  readonly plateExponent: number;
}

/** A wetted place outside the unit, on one of the mains. */
export interface WettedNode {
  readonly id: string;
  readonly name: string;
  readonly main: 'supply' | 'return';
  readonly elevationM: number;
  /** Loss between the anchor (supply tank, or separator) and here at rated flow, Pa; scales with flow². */
  readonly lossAtRatedFlowPa: number;
  /** Index into `branches` where it is a place of one branch: while that is isolated, it is no part of the loop. */
  readonly branch?: number;
  /** Index into the holder's `places`. */
  readonly place: number;
}

/** How an inlet or a hose lets air pass when its far end is open. */
export interface HoseFittings {
  readonly restrictorBoreM: number | null;
  readonly outletBoreM: number | null;
  readonly inletCheckValve: boolean;
}

export interface CompiledBranch {
  readonly id: string;
  readonly name: string;
  readonly ratedFlowM3PerS: number | null;
  readonly place: number;
  /** Bore of the rack's own hose or main connection, m. */
  readonly mainBoreM: number | null;
  /** Cross-section of the rack manifold, m²; undefined where not stated. */
  readonly manifoldAreaM2?: number;
  readonly commissioned?: BranchLoss;
  readonly fittings: HoseFittings;
  /** −1 where there is no such sensor. */
  readonly slot: {
    readonly flow: number;
    readonly returnTemperature: number;
    readonly returnPressure: number;
    readonly power: number;
    readonly isolated: number;
    readonly waterFound: number;
  };
}

export interface CompiledServer {
  readonly id: string;
  readonly name: string;
  /** Index into `branches`; −1 = none. */
  readonly branch: number;
  readonly place: number;
  readonly slot: { readonly returnTemperature: number; readonly power: number; readonly fanSpeed: number };
}

export interface CompiledTank {
  readonly id: string;
  readonly name: string;
  readonly areaM2: number | null;
  readonly place: number;
  readonly slot: { readonly level: number; readonly pressure: number; readonly filling: number };
}

export interface CompiledPlate {
  readonly id: string;
  readonly name: string;
  /** Index into `servers`; −1 = none. */
  readonly server: number;
  /** Index into `branches`; −1 = none. */
  readonly branch: number;
  readonly place: number;
  readonly elevationM: number | null;
  /** Null where no fans carry its heat when the water stands. */
  readonly fanPath: FanPath | null;
  /** Undefined: as the unit says of all its plates. */
  readonly fullPowerW?: number;
  readonly chipAreaM2?: number;
  readonly slot: { readonly temperature: number; readonly power: number };
}

/** Suction of one source by pressure at its seal temperature, S(p), m³/s; linear between rows. */
export interface VacuumSource {
  readonly count: number;
  /** startStop: between two edges; speed: by a drive; constant: full speed with a bleed, where only flow tells. */
  readonly control: 'startStop' | 'speed' | 'constant';
  /** The site file says so itself: then a stop of a source by speed or at constant speed is a trip. */
  readonly controlStated?: true;
  /** Seal water temperature at which the curve holds, °C; null: not stated, or no liquid ring. */
  readonly sealWaterC: number | null;
  readonly pressurePa: readonly number[];
  readonly suctionM3PerS: readonly number[];
}

/** What one level says, by entry; null: back to the catalogue's defaults. */
export type LimitsAt = ReadonlyMap<string, EntryLimits | null>;

/** The levels of which the limits of a unit are made: each wins over those before it. */
export interface LimitLevels {
  /** Bands of the water's quality (`water`), which limits may say otherwise. */
  readonly bands: LimitsAt;
  readonly site: LimitsAt;
  readonly hall: LimitsAt;
  readonly unit: LimitsAt;
}

/** What the site file may change of a catalogue entry, SI; undefined keys keep the catalogue's default. */
export interface EntryLimits {
  readonly limit?: number;
  /** Lower end of the band, of entries that have one. */
  readonly low?: number;
  readonly deadband?: number;
  readonly onDelayMs?: number;
  readonly offDelayMs?: number;
  /** How long after it was acknowledged the alarm is told anew, ms; left out, or Infinity: not at all. */
  readonly reAlarmAfterMs?: number;
  readonly enabled?: boolean;
  /** First action by site procedure; left out, or empty: that of the catalogue. */
  readonly action?: string;
}
