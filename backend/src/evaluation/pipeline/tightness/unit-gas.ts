import type { Fluid } from '@ebbline/shared/fluid-properties/fluid';
import { celsius } from '@ebbline/shared/units/quantity';
import { zeroCelsiusK } from '@ebbline/shared/units/constants';
import { usable } from '../../alarm-rules/judge-context';
import { unitPlan, type UnitPlan } from '../../derive/unit-plan';
import type { CompiledUnit } from '../../site/compiled-site';
import type { PipelineState } from '../pipeline-state';
import type { TightnessBegin } from '../tightness-record';

/** What a test reads of a unit; NaN where it is not known. */
export interface GasNow {
  readonly pressurePa: number;
  readonly temperatureC: number;
  readonly levelM: number;
  /** Source time of the pressure, ms: a sample counts once. */
  readonly sourceMs: number;
}

export function gasNow({ site, state }: PipelineState, unitIndex: number): GasNow {
  const { slot } = unitPlan(site, unitIndex);
  return {
    pressurePa: usable(state, slot['separator.pressure']),
    temperatureC: usable(state, slot['return.temperature']),
    levelM: usable(state, slot['separator.level']),
    sourceMs: state.sourceMs[slot['separator.pressure']] ?? Number.NaN,
  };
}

/** Room for gas, and by which area the level changes it; null where neither the file nor the person says it. */
export function gasRoom(
  unit: CompiledUnit,
  plan: UnitPlan,
  dry: boolean,
  stated: number | null,
  levelM: number,
): { readonly volumeM3: number; readonly areaM2: number } | null {
  const { volumes, separatorAreaM2 } = unit.design;
  if (stated !== null) return { volumeM3: stated, areaM2: 0 };
  if (volumes.separatorGasM3 === null) return null;
  if (dry) {
    // Where the water was there is gas: the file's water and the gas of both tanks.
    if (volumes.waterM3 === null) return null;
    return { volumeM3: volumes.waterM3 + volumes.separatorGasM3 + (volumes.supplyTankGasM3 ?? 0), areaM2: 0 };
  }
  const follows =
    separatorAreaM2 !== null && volumes.separatorUsualLevelM !== null && plan.slot['separator.level'] >= 0;
  if (!follows) return { volumeM3: volumes.separatorGasM3, areaM2: 0 };
  const rise = separatorAreaM2 * (levelM - (volumes.separatorUsualLevelM ?? Number.NaN));
  return { volumeM3: volumes.separatorGasM3 - rise, areaM2: separatorAreaM2 };
}

/** Vapour that is part of the pressure over water, Pa (Dalton); a dry loop has none that is known. */
export const vapourPa = (fluid: Fluid, dry: boolean, temperatureC: number): number =>
  dry ? 0 : fluid.vapourPressure(celsius(temperatureC));

/** Gas volume now, m³: by the level where it follows one. */
export const volumeNow = ({ gasVolumeM3, areaM2, levelM }: TightnessBegin, levelNowM: number): number =>
  areaM2 === 0 || levelM === null ? gasVolumeM3 : gasVolumeM3 - areaM2 * (levelNowM - levelM);

export const kelvin = (temperatureC: number): number => temperatureC + zeroCelsiusK;
