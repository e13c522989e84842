import { reading, staysUntilRepaired, type SensorFault } from '../sensor-fault';

/** Each sensor and the one whose wires it may have got. */
const partners: Readonly<Record<string, string>> = {
  'supply.temperature': 'return.temperature',
  'facility.supply.temperature': 'facility.return.temperature',
  'supply.pressure': 'return.pressure',
  'supplyTank.pressure': 'separator.pressure',
  'supplyTank.level': 'separator.level',
  'loop.flow': 'facility.flow',
  'branch.r1.flow': 'branch.r2.flow',
  'branch.r1.return.temperature': 'branch.r2.return.temperature',
  'plate.r1a.temperature': 'plate.r2a.temperature',
};

/** Two sensors tell under each other's names, as after work on a terminal strip. Has no size: swapped is swapped. */
export const swappedSensors: SensorFault = {
  kind: 'swappedSensors',
  title: 'two sensors swapped',
  about: 'two sensors of one kind tell under each other’s names, as after work on a terminal strip',
  onsetS: 0,
  repairS: 0,
  lastsS: staysUntilRepaired,
  fits: (point) => point in partners,
  distort(round, order, strength) {
    const other = partners[order.point];
    if (other === undefined || strength < 0.5) return;
    const [one, two] = [reading(round, order.point), reading(round, other)];
    if (one === null || two === null) return;
    round.told.set(order.point, two);
    round.told.set(other, one);
  },
};
