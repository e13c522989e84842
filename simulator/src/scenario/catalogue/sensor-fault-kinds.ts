import { sensorFaultKinds, type SensorFaultKind } from '../../sensors/sensor-fault';
import { sensorFaultTable } from '../../sensors/sensor-fault-table';
import { sensorKindOf } from '../../sensors/sensor-of-point';
import { planPayload } from '../../payload/plan-payload';
import type { FleetUnit } from '../demo-fleet';
import { directionChoice, sizeChoice, type ScenarioKind } from './scenario-kind';

/** Points of a unit that have a sensor which can have the fault. */
export function pointsWith(fault: SensorFaultKind, unit: FleetUnit): readonly string[] {
  return planPayload(unit)
    .map(({ point }) => point)
    .filter((point) => sensorFaultTable[fault].fits(point, sensorKindOf(point, unit.branchMeter)));
}

/** The usual sensor of each fault: one that much hangs on. */
const usualPoint: Partial<Record<SensorFaultKind, string>> = {
  sensorDrift: 'separator.pressure',
  sensorStuck: 'supplyTank.pressure',
  sensorNoisy: 'supplyTank.pressure',
  ventPlugged: 'supply.pressure',
  bubblesAtMeter: 'loop.flow',
  impulseLineGas: 'separator.pressure',
  clampOnSensor: 'supply.temperature',
  swappedSensors: 'supply.temperature',
  fullScaleCode: 'return.temperature',
};

export const sensorFaultsOf = (fleet: readonly FleetUnit[]): readonly ScenarioKind[] =>
  sensorFaultKinds.map((fault): ScenarioKind => {
    const { title, about } = sensorFaultTable[fault];
    const byUnit = fleet.map((unit) => ({ id: unit.id, points: pointsWith(fault, unit) }));
    const values = [...new Set(byUnit.flatMap(({ points }) => points))];
    const usual = values.find((point) => point === usualPoint[fault]) ?? values[0] ?? '';
    return {
      id: fault,
      title,
      kind: 'fault',
      about,
      units: byUnit.filter(({ points }) => points.length > 0).map(({ id }) => id),
      needsBranch: false,
      choices: [
        { key: 'point', title: 'sensor', values, usual },
        ...(fault === 'swappedSensors' ? [] : [sizeChoice]),
        ...(fault === 'sensorDrift' ? [directionChoice] : []),
      ],
    };
  });
