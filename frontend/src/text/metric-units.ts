import type { QuantityKind } from '@ebbline/shared/contract/point-table';
import type { DisplayUnit } from './shown-unit';

const litresPerMinute = 60_000;

/** By what is measured; a power takes its prefix from whose it is. Free air is always said (20 °C, 101.325 kPa). */
export const metricByQuantity: { readonly [K in QuantityKind]: DisplayUnit } = {
  temperature: { unit: '°C', factor: 1, decimals: 1 },
  temperatureDifference: { unit: 'K', factor: 1, decimals: 1 },
  absolutePressure: { unit: 'kPa absolute', factor: 1e-3, decimals: 1 },
  pressureDifference: { unit: 'kPa', factor: 1e-3, decimals: 1 },
  volumeFlow: { unit: 'L/min', factor: litresPerMinute, decimals: 1 },
  freeAirFlow: { unit: 'L/min free air', factor: litresPerMinute, decimals: 1 },
  massFlow: { unit: 'kg/s', factor: 1, decimals: 2 },
  level: { unit: 'm', factor: 1, decimals: 3 },
  power: { unit: 'W', factor: 1, decimals: 0 },
  ratio: { unit: '%', factor: 100, decimals: 1 },
  relativeHumidity: { unit: '% RH', factor: 100, decimals: 0 },
  yesNo: { unit: '', factor: 1, decimals: 0 },
  mode: { unit: '', factor: 1, decimals: 0 },
  conductivity: { unit: 'µS/cm', factor: 10_000, decimals: 0 },
  ph: { unit: 'pH', factor: 1, decimals: 2 },
  turbidity: { unit: 'NTU', factor: 1, decimals: 1 },
  concentration: { unit: 'mg/L', factor: 1000, decimals: 0 },
  thermalConductance: { unit: 'kW/K', factor: 1e-3, decimals: 1 },
  thermalResistance: { unit: 'K/W', factor: 1, decimals: 4 },
  velocity: { unit: 'm/s', factor: 1, decimals: 2 },
  heatFlux: { unit: 'W/cm²', factor: 1e-4, decimals: 1 },
  filmCoefficient: { unit: 'W/(m²·K)', factor: 1, decimals: 0 },
  foulingFactor: { unit: 'm²·K/kW', factor: 1e3, decimals: 3 },
  volume: { unit: 'L', factor: 1000, decimals: 1 },
  duration: { unit: 'min', factor: 1 / 60, decimals: 0 },
  bacteria: { unit: 'CFU/mL', factor: 1, decimals: 0 },
};

const ofCommissioned: DisplayUnit = { unit: '× commissioned', factor: 1, decimals: 2 };
const inSeconds: DisplayUnit = { unit: 's', factor: 1, decimals: 0 };
/** What leaves a closed loop in a minute is too little to read. */
const litresPerDay: DisplayUnit = { unit: 'L/d', factor: 86.4e6, decimals: 1 };
const ofWhatIsSure: DisplayUnit = { unit: '× what is sure', factor: 1, decimals: 2 };
const ofItsLimit: DisplayUnit = { unit: '× its limit', factor: 1, decimals: 2 };

/** Points that are read otherwise than their kind: ratios that are counts or multiples, small bores, short clocks. */
export const metricByPoint: { readonly [point: string]: DisplayUnit } = {
  ntu: { unit: 'transfer units', factor: 1, decimals: 2 },
  openingsCarried: { unit: 'open hoses', factor: 1, decimals: 1 },
  openingsCarriedAll: { unit: 'open hoses', factor: 1, decimals: 1 },
  filterResistance: { unit: '× clean', factor: 1, decimals: 2 },
  loopResistance: ofCommissioned,
  'plate.<id>.resistanceRatio': ofCommissioned,
  'branch.<id>.resistanceRatio': ofCommissioned,
  'plate.<id>.channelReynolds': { unit: 'Re', factor: 1, decimals: 0 },
  foulingResistance: { unit: 'K/MW', factor: 1e6, decimals: 2 },
  heatBalanceSignificance: { unit: '× standard uncertainty', factor: 1, decimals: 1 },
  largestOpeningCarried: { unit: 'mm', factor: 1000, decimals: 1 },
  rideThroughFlow: inSeconds,
  rideThroughPlate: inSeconds,
  rideThroughFans: inSeconds,
  marginTimeToLimit: { unit: 'h', factor: 1 / 3600, decimals: 1 },
  filterTimeToLimit: { unit: 'd', factor: 1 / 86_400, decimals: 1 },
  topUpRate: { unit: 'L/h', factor: 3.6e6, decimals: 1 },
  exhaustWaterLoss: litresPerDay,
  waterBalance: litresPerDay,
  waterBalanceSignificance: { unit: '× standard uncertainty', factor: 1, decimals: 1 },
  equivalentHole: { unit: 'mm', factor: 1000, decimals: 2 },
  equivalentHoleSupply: { unit: 'mm', factor: 1000, decimals: 2 },
  heatBalanceShift: ofWhatIsSure,
  captureShift: ofWhatIsSure,
  flowShareShift: ofWhatIsSure,
  uaRatioShift: ofWhatIsSure,
  pumpEfficiencyShift: ofWhatIsSure,
  inLeakShift: ofWhatIsSure,
  patternDistance: ofItsLimit,
  patternResidual: ofItsLimit,
};
