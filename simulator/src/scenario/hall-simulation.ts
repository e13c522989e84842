import type { RandomSource } from '../sensors/random-source';
import type { Readings } from '../plant/plant-readings';
import { makeSensor, senseValue, type Sensor } from '../sensors/sensor';
import { sensorKinds } from '../sensors/sensor-kind';
import type { HallId } from './demo-fleet';
import { seededRandom } from './seeded-random';
import type { Surroundings } from './surroundings';

/** Barometer, air temperature and humidity of a hall, told every five seconds. */
export const hallPeriodS = 5;

export class HallSimulation {
  private readonly noise: RandomSource;
  private readonly barometer: Sensor;
  private readonly air: Sensor;
  private readonly humidity: Sensor;

  constructor(
    readonly id: HallId,
    seed: number,
  ) {
    const drawn = seededRandom(seed, `${id} sensors`);
    this.noise = seededRandom(seed, `${id} noise`);
    this.barometer = makeSensor(sensorKinds.barometer, drawn);
    this.air = makeSensor(sensorKinds.temperature, drawn);
    this.humidity = makeSensor(sensorKinds.humidity, drawn);
  }

  sense(around: Surroundings, timeS: number): Readings {
    const told = (sensor: Sensor, truth: number): number => senseValue(sensor, truth, timeS, hallPeriodS, this.noise);
    return new Map([
      ['ambient.pressure', told(this.barometer, around.ambientPa)],
      ['hall.temperature', told(this.air, around.hallC)],
      ['hall.humidity', told(this.humidity, around.humidity)],
    ]);
  }
}
