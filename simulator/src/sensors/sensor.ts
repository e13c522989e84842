import type { SensorKind } from './sensor-kind';
import { normal, within, type RandomSource } from './random-source';

/** One sensor: what was drawn for it when it was made, and what it remembers. */
export interface Sensor {
  readonly kind: SensorKind;
  /** Offset and share by which this one is off, drawn evenly within its accuracy. */
  readonly offset: number;
  readonly gain: number;
  /** Second of its poll in which it is asked. */
  readonly pollAtS: number;
  lagged: number;
  told: number;
}

export function makeSensor(kind: SensorKind, source: RandomSource): Sensor {
  return {
    kind,
    offset: kind.accuracy * within(source),
    gain: 1 + kind.accuracyShare * within(source),
    pollAtS: Math.floor(source.uniform() * kind.pollS),
    lagged: Number.NaN,
    told: Number.NaN,
  };
}

/** What the sensor tells at second `timeS` of the plant, `dtS` after it was last asked. */
export function senseValue(sensor: Sensor, truth: number, timeS: number, dtS: number, source: RandomSource): number {
  const { kind } = sensor;
  const share = kind.lagS > 0 ? 1 - Math.exp(-dtS / kind.lagS) : 1;
  sensor.lagged = Number.isNaN(sensor.lagged) ? truth : sensor.lagged + (truth - sensor.lagged) * share;
  const first = Number.isNaN(sensor.told);
  if (!first && kind.pollS > 1 && Math.floor(timeS) % kind.pollS !== sensor.pollAtS) return sensor.told;
  if (!first && kind.missingShare > 0 && source.uniform() < kind.missingShare) return sensor.told;
  sensor.told = quantised(kind, noisy(sensor, source));
  return sensor.told;
}

function noisy(sensor: Sensor, source: RandomSource): number {
  const { kind, lagged } = sensor;
  const read = lagged * sensor.gain + sensor.offset;
  const deviation = Math.hypot(kind.noise, kind.noiseShare * lagged);
  return deviation > 0 ? read + deviation * normal(source) : read;
}

function quantised(kind: SensorKind, value: number): number {
  if (value < kind.blindBelow) return 0;
  return kind.resolution > 0 ? Math.round(value / kind.resolution) * kind.resolution : value;
}
