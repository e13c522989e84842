import { reading, type SensorFault, type SensorFaultSize } from '../sensor-fault';

/** A minute, twenty minutes, until repaired. */
const lasts: Readonly<Record<SensorFaultSize, number | null>> = { small: 60, usual: 1200, large: null };

export const sensorStuck: SensorFault = {
  kind: 'sensorStuck',
  title: 'sensor stuck',
  about: 'the reading stands still to the last digit, whatever the plant does',
  onsetS: 0,
  repairS: 0,
  lastsS: (size) => lasts[size],
  fits: (_point, kind) => kind !== 'exact',
  distort(round, order, strength) {
    const told = reading(round, order.point);
    if (told === null || strength < 0.5) return;
    const held = round.memory.get(order.point) ?? told;
    round.memory.set(order.point, held);
    round.told.set(order.point, held);
  },
};
