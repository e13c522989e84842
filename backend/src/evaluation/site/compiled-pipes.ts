import type { ConductanceFit } from '@ebbline/shared/heat/fit-conductance';
import type { VelocityTableId } from '@ebbline/shared/hydraulics/permissible-velocity';

/** What a unit says of its pipes, plates and chips; null where the file does not say. */
export interface UnitPipes {
  readonly plateFullPowerW: number | null;
  readonly chipAreaM2: number | null;
  readonly plateChannel: PlateChannel | null;
  readonly mains: Mains | null;
  /** Null: velocities are judged by nothing. */
  readonly permissibleVelocity: PermissibleVelocity | null;
}

/** The inside of a cold plate. */
export interface PlateChannel {
  /** Water through one plate at the rated flow of its branch. */
  readonly ratedFlowM3PerS: number;
  readonly wettedAreaM2: number | null;
  /** From chip case to wetted wall, K/W. */
  readonly wallResistanceKPerW: number | null;
  /** One channel, where width, height and count are all stated. */
  readonly channel: { readonly widthM: number; readonly heightM: number; readonly count: number } | null;
}

export interface Mains {
  readonly boreM: number;
  /** Straight length of both together. */
  readonly lengthM: number | null;
  readonly roughnessM: number;
}

export type PermissibleVelocity = { readonly table: VelocityTableId } | { readonly limitMPerS: number };

/** What records of commissioning say beyond one figure at rated flow. */
export interface CommissionedRecords {
  /** How the resistance of the clean exchanger is shared out, where three records or more tell; null: half on each side. */
  readonly uaFit: Omit<ConductanceFit, 'clean'> | null;
  /** Area of the exchanger's plates. */
  readonly uaAreaM2: number | null;
  /** Water in the filter when its loss was taken, °C. */
  readonly filterTemperatureC: number | null;
  readonly pump: CommissionedPump | null;
}

/** The pump at one flow and speed (share of full speed); half-widths are shares. */
export interface CommissionedPump {
  readonly flowM3PerS: number;
  readonly speed: number;
  readonly risePa: number | null;
  readonly flowHalfWidth: number;
  readonly headHalfWidth: number;
  readonly efficiencyHalfWidth: number;
}

/** Loss from supply tank to separator by way of one branch at its rated flow. */
export interface BranchLoss {
  readonly lossPa: number;
  readonly exponent: number;
}
