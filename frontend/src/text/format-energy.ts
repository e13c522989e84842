import type { EnergyTotal } from '@ebbline/shared/contract/energy';
import { decimalsFor, formatNumber } from './format-number';

/** One unit of measure for a whole table, so that its rows can be compared. */
export interface EnergyUnit {
  readonly unit: 'kWh' | 'MWh';
  /** J in one of it. */
  readonly joules: number;
  readonly decimals: number;
}

const kilowattHour: EnergyUnit = { unit: 'kWh', joules: 3.6e6, decimals: 1 };
const megawattHour: EnergyUnit = { unit: 'MWh', joules: 3.6e9, decimals: 2 };

/** @param largest J */
export const energyUnitFor = (largest: number): EnergyUnit =>
  largest >= 10 * megawattHour.joules ? megawattHour : kilowattHour;

/** `412 ± 8`, in the unit of the table; null where nothing was measured. */
export function formatEnergy(
  { energy, expandedUncertainty }: Pick<EnergyTotal, 'energy' | 'expandedUncertainty'>,
  { joules, decimals }: EnergyUnit,
): string | null {
  if (energy === null) return null;
  const spread = expandedUncertainty === null ? null : expandedUncertainty / joules;
  const places = (spread === null ? undefined : decimalsFor(spread)) ?? decimals;
  const said = formatNumber(energy / joules, places);
  return spread === null || spread <= 0 ? said : `${said}\u00a0±\u00a0${formatNumber(spread, places)}`;
}

/**
 * How much of a period was measured. Whole per cent, but never rounded up to all of it nor down to nothing: a gap of a
 * minute in a month is a gap.
 */
export function sayMeasured({ share, energy }: Pick<EnergyTotal, 'share' | 'energy'>): string {
  if (share === null) return 'not measured here';
  if (energy === null || share <= 0) return 'nothing measured';
  if (share >= 1) return 'all measured';
  if (share < 0.01) return '<\u00a01\u00a0% measured';
  const percent = Math.min(99.9, share * 100);
  return `${formatNumber(percent, percent > 99 ? 1 : 0)}\u00a0% measured`;
}
