import { lagged, reading, staysUntilRepaired, type SensorFault, type SensorFaultSize } from '../sensor-fault';

/** How long the plugged vent takes to follow the room: half an hour, six hours, never. */
const followsS: Readonly<Record<SensorFaultSize, number>> = { small: 1800, usual: 21_600, large: Infinity };
/** Sensors that count from ambient in the demo site's payloads. */
const gaugeSensors = ['supply.pressure', 'return.pressure'];

/**
 * A gauge sensor compares with the air behind its membrane. Is the vent plugged, that air stays at what it was: the
 * sensor reads as a sealed gauge. Against a true gauge it is then off by the change of the barometer since; whoever
 * adds today's barometer to it gets an absolute pressure that follows the barometer though the plant does not.
 */
export const ventPlugged: SensorFault = {
  kind: 'ventPlugged',
  title: 'gauge vent plugged',
  about: 'a gauge sensor no longer feels the room: it counts from the ambient pressure of the moment it was plugged',
  onsetS: 0,
  repairS: 0,
  lastsS: staysUntilRepaired,
  fits: (point) => gaugeSensors.includes(point),
  distort(round, order, strength) {
    const told = reading(round, order.point);
    if (told === null || strength < 0.5) return;
    const behindPa = lagged(round, order.point, round.ambientPa, followsS[order.size]);
    // the payload writes this value less today's ambient: told less the pressure behind the membrane
    round.told.set(order.point, told + round.ambientPa - behindPa);
  },
};
