import { plantModes, type PlantMode } from '../plant/orders';

/** One value in a payload: which point, where in the JSON object, in which unit of measure. */
export interface PayloadRow {
  /** Point id; `*` stands for a branch or a plate. */
  readonly point: string;
  /** Keys on the way in; `{branch}` and `{plate}` are filled in. */
  readonly path: readonly string[];
  readonly tell: Tell;
}

/** Value in SI, with the ambient pressure that a gauge sensor feels → number or word in the payload. */
export type Tell = (value: number, ambientPa: number) => number | string | boolean;

const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals));
const scale =
  (factor: number, decimals: number): Tell =>
  (value) =>
    rounded(value / factor, decimals);
const gauge =
  (factor: number, decimals: number): Tell =>
  (value, ambientPa) =>
    rounded((value - ambientPa) / factor, decimals);

/** The north hall's gateways have words of their own for the modes. */
export const modeWords: Readonly<Record<PlantMode, string>> = {
  off: 'STOP',
  vented: 'OPEN',
  tightnessTest: 'TIGHT',
  filling: 'FILL',
  purging: 'PURGE',
  starting: 'START',
  running: 'RUN',
  standby: 'STANDBY',
  stopping: 'STOPPING',
  draining: 'DRAIN',
  service: 'SERVICE',
  powerReturn: 'RETURN',
};

/** How numbers leave the sender; the last figure is the number of decimals. */
export const tell = {
  celsius: scale(1, 2),
  wholeCelsius: scale(1, 0),
  kPa: scale(1e3, 2),
  kPaGauge: gauge(1e3, 2),
  bar: scale(1e5, 4),
  mbar: scale(100, 1),
  mbarGauge: gauge(100, 1),
  hPa: scale(100, 2),
  litrePerMin: scale(1 / 60000, 2),
  m3PerHour: scale(1 / 3600, 4),
  m3PerHourFreeAir: scale(1 / 3600, 3),
  percent: scale(0.01, 2),
  metre: scale(1, 4),
  centimetre: scale(0.01, 2),
  watt: scale(1, 0),
  kW: scale(1e3, 2),
  yesNo: (value: number) => value > 0.5,
  litre: scale(1e-3, 3),
  microsiemensPerCm: scale(1e-4, 2),
  milligramPerLitre: scale(1e-3, 1),
  plain: scale(1, 3),
  modeWord: (value: number) => modeWords[plantModes[value] ?? 'off'],
  modeName: (value: number) => plantModes[value] ?? 'off',
  ropeWord: (value: number) => (value > 0.5 ? 'wet' : 'dry'),
} as const;
