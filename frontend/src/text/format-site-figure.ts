import { formatNumber } from './format-number';
import type { Conversion } from './shown-unit';
import { inUnit, spreadInUnit } from './shown-unit';
import { unitSystem } from './unit-system';
import { usOfSiteFigure } from './us-units';

interface Shown extends Conversion {
  readonly unit: string;
}

/** How UCUM codes of figures that are no points are written; Pa, W and flows as the screens have them. */
const shownAs: { readonly [ucum: string]: Shown } = {
  '1': { unit: '', factor: 1 },
  Cel: { unit: '°C', factor: 1 },
  Pa: { unit: 'kPa', factor: 1e-3 },
  W: { unit: 'kW', factor: 1e-3 },
  'W/K': { unit: 'kW/K', factor: 1e-3 },
  'm3/s': { unit: 'L/min', factor: 60_000 },
  m3: { unit: 'L', factor: 1000 },
  'S/m': { unit: 'µS/cm', factor: 10_000 },
};
const raised: { readonly [digit: string]: string } = { '2': '²', '3': '³', '4': '⁴' };
const significant = 4;

/** `kg/m3` as people write it: `kg/m³`. */
const pretty = (ucum: string): string =>
  ucum.replace(/(?<=[A-Za-z])([234])/g, (_, digit: string) => raised[digit] ?? digit).replaceAll('.', '·');

/** Bores, channels and chips, which nobody counts in metres or feet. */
interface Fine extends Shown {
  readonly below: number;
}
const smallMetric: { readonly [ucum: string]: Fine } = {
  m: { below: 0.5, unit: 'mm', factor: 1000 },
  m2: { below: 0.01, unit: 'cm²', factor: 10_000 },
};
const inchM = 0.0254;
const smallUs: { readonly [ucum: string]: Fine } = {
  m: { below: 0.5, unit: 'in', factor: 1 / inchM },
  m2: { below: 0.01, unit: 'in²', factor: 1 / inchM ** 2 },
};

function shownOf(ucum: string, value: number): Shown {
  const us = unitSystem() === 'us';
  const fine = (us ? smallUs : smallMetric)[ucum];
  if (fine !== undefined && value !== 0 && Math.abs(value) < fine.below) return fine;
  return (us ? usOfSiteFigure[ucum] : undefined) ?? shownAs[ucum] ?? { unit: pretty(ucum), factor: 1 };
}

/** A number with four significant digits, none after the last that is not nought. */
function plain(value: number): string {
  if (value === 0) return '0';
  const decimals = Math.min(12, significant - 1 - Math.floor(Math.log10(Math.abs(value))));
  const text = formatNumber(value, Math.max(0, decimals));
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** A figure of the site file as people read it, number and unit held together. @param ucum its UCUM code */
export function formatSiteFigure(value: number, ucum: string): string {
  const shown = shownOf(ucum, value);
  return `${plain(inUnit(value, shown))}${shown.unit === '' ? '' : `\u00a0${shown.unit}`}`;
}

/**
 * A standard uncertainty in the unit in which its value is shown, with two significant digits (GUM 7.2.6).
 * @param difference the unit in which a difference of two such values is shown
 */
export function formatContribution(contribution: number, difference: Shown): string {
  const shown = spreadInUnit(contribution, difference);
  const decimals = shown === 0 ? 0 : Math.min(9, 1 - Math.floor(Math.log10(Math.abs(shown))));
  return `${formatNumber(shown, decimals)}${difference.unit === '' ? '' : `\u00a0${difference.unit}`}`;
}

/** A share in whole per cent, below nought where it takes away; what is there and rounds to none is said so. */
export function formatShare(share: number): string {
  if (share !== 0 && Math.abs(share) < 0.005) return '<\u00a01\u00a0%';
  return `${formatNumber(share * 100, 0)}\u00a0%`;
}
