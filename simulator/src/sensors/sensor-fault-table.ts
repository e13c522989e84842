import { bubblesAtMeter } from './faults/bubbles-at-meter';
import { clampOnSensor } from './faults/clamp-on-sensor';
import { fullScaleCode } from './faults/full-scale-code';
import { impulseLineGas } from './faults/impulse-line-gas';
import { sensorDrift } from './faults/sensor-drift';
import { sensorNoisy } from './faults/sensor-noisy';
import { sensorStuck } from './faults/sensor-stuck';
import { swappedSensors } from './faults/swapped-sensors';
import { ventPlugged } from './faults/vent-plugged';
import type { SensorFault, SensorFaultKind } from './sensor-fault';

export const sensorFaultTable: Readonly<Record<SensorFaultKind, SensorFault>> = {
  sensorDrift,
  sensorStuck,
  sensorNoisy,
  ventPlugged,
  bubblesAtMeter,
  impulseLineGas,
  clampOnSensor,
  swappedSensors,
  fullScaleCode,
};
