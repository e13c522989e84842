import type { MolybdateForm } from '@ebbline/shared/contract/hand-entry';
import type { WaterParameterId } from '@ebbline/shared/contract/water-parameters';

/** Ends of a band in the unit of measure of the parameter (molybdate as Mo); NaN where there is none. */
export interface WaterBand {
  readonly lowLow: number;
  readonly low: number;
  readonly high: number;
  readonly highHigh: number;
  readonly basis: string;
}

export interface CompiledWaterParameter {
  readonly id: WaterParameterId;
  readonly band: WaterBand;
  /** Point of the sensor; −1 = none. */
  readonly sensorSlot: number;
  /** Point of what people type; −1 = nobody does. */
  readonly handSlot: number;
  /** A typed value counts for so long, ms; NaN: no interval is stated. */
  readonly dueMs: number;
  readonly lastCalibration: string | null;
}

/** What the water of one unit is looked after by. */
export interface CompiledWater {
  /** Rise of conductivity per kelvin, 1/K. */
  readonly conductivityCoefficient: number;
  /** `water.ph` was made from mV with the slope of 25 °C: the slope is put right. */
  readonly phSlopeOf25: boolean;
  readonly molybdateShownAs: MolybdateForm;
  /** Those that the unit measures, or that people type. In the order of the contract. */
  readonly parameters: readonly CompiledWaterParameter[];
}
