import { makeSensor, senseValue, type Sensor } from '../sensors/sensor';
import type { SensorFaultKind, SensorFaultOrder, SensorRound } from '../sensors/sensor-fault';
import { sensorFaultTable } from '../sensors/sensor-fault-table';
import { sensorKinds, type SensorKindName } from '../sensors/sensor-kind';
import { sensorKindOf } from '../sensors/sensor-of-point';
import type { Readings } from '../plant/plant-readings';
import type { RandomSource } from '../sensors/random-source';
import type { FleetUnit } from './demo-fleet';
import type { Surroundings } from './surroundings';
import { seededRandom } from './seeded-random';
import { isOver, strengthAt, type Timed } from './timed';

/** Faults of the sensor itself: a controller on the same sensor is deceived too. The others sit in wires and meters. */
const deceiving: readonly SensorFaultKind[] = ['sensorDrift', 'sensorStuck', 'impulseLineGas', 'clampOnSensor'];

/** A lying sensor, and what its lie remembers. */
export interface ActiveSensorFault extends Timed {
  readonly order: SensorFaultOrder;
  readonly memory: Map<string, number>;
}

/** All sensors of one unit, with the faults among them. */
export class UnitSensors {
  readonly faults: ActiveSensorFault[] = [];
  private readonly sensors = new Map<string, Sensor>();
  private readonly drawn: RandomSource;
  private readonly noise: RandomSource;
  private readonly lies: RandomSource;
  private readonly offsets = new Map<string, number>();

  constructor(
    private readonly unit: FleetUnit,
    seed: number,
  ) {
    this.drawn = seededRandom(seed, `${unit.id} sensors`);
    this.noise = seededRandom(seed, `${unit.id} noise`);
    // faults draw from a stream of their own: a fault changes no other reading
    this.lies = seededRandom(seed, `${unit.id} sensor faults`);
  }

  /** What the sensors tell of the truth, second by second. */
  sense(truth: Readings, timeS: number, around: Surroundings): Readings {
    const told: Readings = new Map();
    for (const [point, value] of truth) {
      told.set(point, senseValue(this.sensorOf(point), value, timeS, 1, this.noise));
    }
    this.distort(told, timeS, around);
    return told;
  }

  /** How far a controller on this sensor is deceived, SI: the lie of the last second less what it should have told. */
  deceitAt(point: string): number {
    return this.offsets.get(point) ?? 0;
  }

  private kindOf(point: string): SensorKindName {
    return sensorKindOf(point, this.unit.branchMeter);
  }

  private sensorOf(point: string): Sensor {
    const kept = this.sensors.get(point) ?? makeSensor(sensorKinds[this.kindOf(point)], this.drawn);
    this.sensors.set(point, kept);
    return kept;
  }

  private distort(told: Readings, timeS: number, around: Surroundings): void {
    const { faults } = this;
    this.offsets.clear();
    for (let i = faults.length - 1; i >= 0; i -= 1) {
      const active = faults[i] as ActiveSensorFault;
      const fault = sensorFaultTable[active.order.fault];
      if (isOver(active, fault, fault.lastsS(active.order.size), timeS)) {
        faults.splice(i, 1);
        continue;
      }
      const { point } = active.order;
      const honest = told.get(point) ?? Number.NaN;
      const round: SensorRound = {
        told,
        memory: active.memory,
        kindOf: (point) => this.kindOf(point),
        noiseOf: (point, value) => {
          const kind = sensorKinds[this.kindOf(point)];
          return Math.hypot(kind.noise, kind.noiseShare * value);
        },
        ambientPa: around.ambientPa,
        hallC: around.hallC,
        dtS: 1,
        chance: this.lies,
      };
      fault.distort(round, active.order, strengthAt(active, fault, timeS));
      const lie = (told.get(point) ?? Number.NaN) - honest;
      if (deceiving.includes(active.order.fault) && lie !== 0 && Number.isFinite(lie))
        this.offsets.set(point, this.deceitAt(point) + lie);
    }
  }
}
