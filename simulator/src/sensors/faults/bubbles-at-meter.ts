import { normal } from '../random-source';
import { reading, staysUntilRepaired, type SensorFault, type SensorFaultSize } from '../sensor-fault';

/** Share of samples in which the sound does not come through. */
const lostShare: Readonly<Record<SensorFaultSize, number>> = { small: 0.5, usual: 0.9, large: 1 };
/** Scatter that bubbles at the electrodes bring, share of the reading. */
const scatter: Readonly<Record<SensorFaultSize, number>> = { small: 0.02, usual: 0.06, large: 0.2 };

/** Bubbles in the meter: an ultrasonic one keeps telling its last good value, an electromagnetic one becomes noisy. */
export const bubblesAtMeter: SensorFault = {
  kind: 'bubblesAtMeter',
  title: 'bubbles in a flow meter',
  about: 'an ultrasonic meter holds its last value, an electromagnetic one scatters',
  onsetS: 0,
  repairS: 0,
  lastsS: staysUntilRepaired,
  fits: (_point, kind) => kind === 'electromagneticFlow' || kind === 'ultrasonicFlow',
  distort(round, order, strength) {
    const told = reading(round, order.point);
    if (told === null || strength < 0.5) return;
    if (round.kindOf(order.point) === 'electromagneticFlow') {
      round.told.set(order.point, told * (1 + scatter[order.size] * normal(round.chance)));
      return;
    }
    const lost = round.chance.uniform() < lostShare[order.size];
    const held = lost ? (round.memory.get(order.point) ?? told) : told;
    round.memory.set(order.point, held);
    round.told.set(order.point, held);
  },
};
