import type { RandomSource } from './random-source';
import type { SensorKindName } from './sensor-kind';

export const sensorFaultKinds = [
  'sensorDrift',
  'sensorStuck',
  'sensorNoisy',
  'ventPlugged',
  'bubblesAtMeter',
  'impulseLineGas',
  'clampOnSensor',
  'swappedSensors',
  'fullScaleCode',
] as const;
export type SensorFaultKind = (typeof sensorFaultKinds)[number];

export type SensorFaultSize = 'small' | 'usual' | 'large';

/** What is asked for: which fault, how big, at which sensor. */
export interface SensorFaultOrder {
  readonly fault: SensorFaultKind;
  readonly size: SensorFaultSize;
  /** The sensor's point; of a swapped pair the first one. */
  readonly point: string;
  /** sensorDrift: which way it goes. */
  readonly direction: 'rise' | 'fall';
}

/** What the sensors of one unit tell at one second, SI and °C, before the payload is written. */
export interface SensorRound {
  /** By point; a fault writes its lie here. */
  readonly told: Map<string, number>;
  /** What the sensor itself adds and remembers stays in the fault's own memory, by any name. */
  readonly memory: Map<string, number>;
  kindOf(point: string): SensorKindName;
  /** Deviation of the sensor's own noise at a reading, 0 where it has none. */
  noiseOf(point: string, reading: number): number;
  readonly ambientPa: number;
  readonly hallC: number;
  readonly dtS: number;
  readonly chance: RandomSource;
}

export interface SensorFault {
  readonly kind: SensorFaultKind;
  readonly title: string;
  /** What it does to the reading, in one sentence. */
  readonly about: string;
  /** Time constants with which it comes and goes, s; 0: at once. */
  readonly onsetS: number;
  readonly repairS: number;
  /** Ends by itself after so many seconds; null: stays until repaired. */
  lastsS(size: SensorFaultSize): number | null;
  /** Can this sensor have it? */
  fits(point: string, kind: SensorKindName): boolean;
  /** Changes what is told, at a strength of 0 (gone) to 1 (full). */
  distort(round: SensorRound, order: SensorFaultOrder, strength: number): void;
}

/** A reading that is there. */
export function reading(round: SensorRound, point: string): number | null {
  const value = round.told.get(point);
  return value === undefined || Number.isNaN(value) ? null : value;
}

/** First-order lag kept under a name in the fault's memory; starts at the value it is first given. */
export function lagged(round: SensorRound, name: string, value: number, lagS: number): number {
  const before = round.memory.get(name) ?? value;
  const now = before + (value - before) * (1 - Math.exp(-round.dtS / lagS));
  round.memory.set(name, now);
  return now;
}

export const staysUntilRepaired = (): null => null;
