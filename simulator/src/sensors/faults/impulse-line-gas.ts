import { lagged, reading, staysUntilRepaired, type SensorFault, type SensorFaultSize } from '../sensor-fault';

const lagS: Readonly<Record<SensorFaultSize, number>> = { small: 10, usual: 40, large: 120 };
/** The gas column weighs less than the water it took the place of: so much too high, Pa (0.05, 0.15 and 0.4 m of water). */
const offPa: Readonly<Record<SensorFaultSize, number>> = { small: 500, usual: 1500, large: 4000 };

export const impulseLineGas: SensorFault = {
  kind: 'impulseLineGas',
  title: 'gas in an impulse line',
  about: 'a pressure sensor becomes slow and reads a little high: gas in its line springs, and weighs nothing',
  onsetS: 0,
  repairS: 0,
  lastsS: staysUntilRepaired,
  fits: (_point, kind) => kind === 'pressure' || kind === 'pressureDrop',
  distort(round, order, strength) {
    const told = reading(round, order.point);
    if (told === null || strength < 0.5) return;
    const offset = round.kindOf(order.point) === 'pressure' ? offPa[order.size] : 0;
    round.told.set(order.point, lagged(round, order.point, told, lagS[order.size]) + offset);
  },
};
