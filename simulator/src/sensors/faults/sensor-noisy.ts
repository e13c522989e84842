import { normal } from '../random-source';
import { reading, staysUntilRepaired, type SensorFault, type SensorFaultSize } from '../sensor-fault';

const times: Readonly<Record<SensorFaultSize, number>> = { small: 3, usual: 10, large: 30 };

/** The deviation of the whole noise becomes so many times the sensor's own. */
export const sensorNoisy: SensorFault = {
  kind: 'sensorNoisy',
  title: 'sensor noisy',
  about: 'the reading keeps its mean and scatters many times as wide: a loose clamp, a bad screen, a failing amplifier',
  onsetS: 0,
  repairS: 0,
  lastsS: staysUntilRepaired,
  fits: (_point, kind) => !['exact', 'chipTemperature'].includes(kind),
  distort(round, order, strength) {
    const told = reading(round, order.point);
    if (told === null) return;
    const own = round.noiseOf(order.point, told);
    const added = Math.sqrt(times[order.size] ** 2 - 1) * own * strength;
    round.told.set(order.point, told + added * normal(round.chance));
  },
};
