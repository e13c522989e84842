import { reading, staysUntilRepaired, type SensorFault, type SensorFaultSize } from '../sensor-fault';
import type { SensorKindName } from '../sensor-kind';

/** How far the usual drift goes, SI: about five times the accuracy. The small one is half, the large one 2.5 times that. */
const usualDrift: Partial<Record<SensorKindName, number>> = {
  pressure: 2000,
  barometer: 500,
  temperature: 1,
  level: 0.03,
  pressureDrop: 2000,
  chipTemperature: 5,
  valve: 0.05,
  humidity: 0.1,
};
/** The same for meters, as a share of the reading. */
const usualShare: Partial<Record<SensorKindName, number>> = {
  electromagneticFlow: 0.05,
  ultrasonicFlow: 0.1,
  exhaustFlow: 0.15,
  boardPower: 0.2,
  powerMeter: 0.05,
};
const times: Readonly<Record<SensorFaultSize, number>> = { small: 0.5, usual: 1, large: 2.5 };

/** So far off at full strength, SI; 0 for what cannot drift. */
export function driftOf(kind: SensorKindName, size: SensorFaultSize, told: number): number {
  return times[size] * ((usualDrift[kind] ?? 0) + (usualShare[kind] ?? 0) * told);
}

/** The sensor reads off by an amount that grows. A regulator that holds its reading moves the plant the other way. */
export const sensorDrift: SensorFault = {
  kind: 'sensorDrift',
  title: 'sensor drifts',
  about: 'the reading goes off; where a regulator holds it, the plant goes off the other way',
  onsetS: 20,
  repairS: 0,
  lastsS: staysUntilRepaired,
  fits: (_point, kind) => kind in usualDrift || kind in usualShare,
  distort(round, order, strength) {
    const told = reading(round, order.point);
    if (told === null) return;
    const sign = order.direction === 'rise' ? 1 : -1;
    round.told.set(order.point, told + sign * strength * driftOf(round.kindOf(order.point), order.size, told));
  },
};
