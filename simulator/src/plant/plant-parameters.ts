/**
 * What a unit type is made of. All SI and °C; losses are at rated flow and grow with its square.
 * The values stand in `unit-type-*.ts`.
 */
export interface PlantParameters {
  readonly kind: UnitKind;
  readonly racks: number;
  readonly serversPerRack: number;
  readonly chipsPerServer: number;
  readonly chipPowerW: number;
  readonly ratedFlowM3PerS: number;
  readonly set: SetPoints;
  readonly elevationM: Elevations;
  readonly lossPa: Losses;
  readonly boreM: Bores;
  readonly volumeM3: Volumes;
  readonly vacuum: VacuumParameters;
  readonly pump: PumpParameters;
  readonly exchanger: ExchangerParameters;
  readonly chip: ChipParameters;
  /** Tightness at commissioning, m³/s of free air into the receiver. */
  readonly baseInLeakFreeM3PerS: number;
}

export type UnitKind = 'M' | 'H' | 'bench';

export interface SetPoints {
  readonly supplyTankPa: number;
  readonly separatorPa: number;
  /** Half the start/stop band of the vacuum source. */
  readonly separatorBandPa: number;
  readonly supplyC: number;
}

export interface Elevations {
  readonly supplySurface: number;
  readonly returnInlet: number;
  readonly separatorSurface: number;
  readonly pumpEye: number;
  /** Where the transfer line ends, above the supply tank's surface. */
  readonly delivery: number;
  readonly floorMain: number;
  readonly manifoldTop: number;
  readonly rackReturnTap: number;
  /** Pressure sensors of the unit's supply and return pipes. */
  readonly supplySensor: number;
  readonly returnSensor: number;
}

export interface Losses {
  /** Each of the two mains. */
  readonly main: number;
  /** The part of the supply main up to the lowest point. */
  readonly supplyToLowPoint: number;
  /** Rack hose and manifold, each side. */
  readonly hoseAndManifold: number;
  readonly restrictor: number;
  readonly platesAndHoses: number;
  readonly pumpSuction: number;
  readonly filter: number;
  /** Exchanger, fittings and transfer line. */
  readonly transferRest: number;
}

export interface Bores {
  readonly restrictor: number;
  /** What limits the air at a cut: the outlet coupling. */
  readonly outlet: number;
  readonly serverHose: number;
  /** The hose of a whole rack. */
  readonly rackHose: number;
}

export interface Volumes {
  readonly supplyTankWater: number;
  readonly supplyTankGas: number;
  readonly supplyTankAreaM2: number;
  readonly separatorWater: number;
  /** With the receiver. */
  readonly separatorGas: number;
  readonly separatorAreaM2: number;
  readonly supplyMain: number;
  readonly returnMain: number;
  readonly rack: number;
  /** Water of the unit between pump and supply tank. */
  readonly unit: number;
}

export interface VacuumParameters {
  /** startStop: runs between the edges of the band. continuous: never stops; a recirculation valve takes what its lowest speed moves too much. */
  readonly control: 'startStop' | 'continuous';
  readonly sources: number;
  /** Each, m³/s. */
  readonly sweptM3PerS: number;
  readonly sealC: number;
  /** How much the suction line cools the gas below the water's temperature, K. */
  readonly suctionCoolingK: number;
  readonly lowestSpeed: number;
  /** 0 to 100 %, s. */
  readonly rampS: number;
  readonly standbyAbovePa: number;
  readonly standbyDelayS: number;
  readonly standbyLeastRunS: number;
  readonly powerW: number;
}

export interface PumpParameters {
  /** Head = shutOffM n² − fallM (q / rated)². */
  readonly shutOffM: number;
  readonly fallM: number;
  readonly requiredSuctionHeadM: number;
  readonly powerW: number;
}

export interface ExchangerParameters {
  /** At the reference flows of both sides, clean, W/K. */
  readonly uaWPerK: number;
  readonly referenceKgPerS: number;
  readonly facilityFullKgPerS: number;
  readonly facilitySupplyC: number;
  readonly valveStrokeS: number;
}

export interface ChipParameters {
  /** Case to inlet water: fixed + flow part × (q / rated)^−0.8, K/W. */
  readonly fixedKPerW: number;
  readonly flowKPerW: number;
  readonly heatJPerK: number;
  readonly fans: {
    readonly idleWPerK: number;
    readonly fullWPerK: number;
    readonly fullFromC: number;
    readonly lagS: number;
  } | null;
  /** The chip lowers its power here, °C. */
  readonly throttleC: number;
  /** A hard-wired trip of the heater; null: none. */
  readonly tripC: number | null;
}
