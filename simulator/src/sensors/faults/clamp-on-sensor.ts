import { lagged, reading, staysUntilRepaired, type SensorFault, type SensorFaultSize } from '../sensor-fault';

/** Common practice, no source: 30 to 90 s late, and a kelvin or so towards the room. */
const lagS: Readonly<Record<SensorFaultSize, number>> = { small: 30, usual: 60, large: 90 };
/** Share of the difference between water and room that is lost on the way: 0.5, 1 and 2 K at 15 K. */
const lostShare: Readonly<Record<SensorFaultSize, number>> = { small: 0.033, usual: 0.067, large: 0.13 };

export const clampOnSensor: SensorFault = {
  kind: 'clampOnSensor',
  title: 'temperature sensor clamped on the pipe',
  about: 'the sensor has slipped out of its pocket: late by a minute, and off towards the room',
  onsetS: 0,
  repairS: 0,
  lastsS: staysUntilRepaired,
  fits: (_point, kind) => kind === 'temperature',
  distort(round, order, strength) {
    const told = reading(round, order.point);
    if (told === null || strength < 0.5) return;
    const late = lagged(round, order.point, told, lagS[order.size]);
    round.told.set(order.point, late + lostShare[order.size] * (round.hallC - late));
  },
};
