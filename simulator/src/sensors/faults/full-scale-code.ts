import { staysUntilRepaired, type SensorFault, type SensorFaultSize } from '../sensor-fault';
import type { SensorKindName } from '../sensor-kind';

/**
 * What an input card tells of a broken wire: the end of its table or the largest number of its register, SI. A Pt100's
 * table ends at 850 °C (IEC 60751); the others are 16-bit registers of tenths or hundredths, common practice, no source.
 */
const codes: Partial<Record<SensorKindName, number>> = {
  pressure: 655_350,
  barometer: 655_350,
  temperature: 850,
  electromagneticFlow: 6553.5 / 60_000,
  ultrasonicFlow: 6553.5 / 60_000,
  exhaustFlow: 6553.5 / 60_000,
  level: 6.5535,
  pressureDrop: 655_350,
  chipTemperature: 255,
  powerMeter: 6_553_500,
};
/** One sample in twenty: a loose contact. */
const looseShare = 0.05;
const sizes: Readonly<Record<SensorFaultSize, 'loose' | 'one' | 'card'>> = {
  small: 'loose',
  usual: 'one',
  large: 'card',
};

export const fullScaleCode: SensorFault = {
  kind: 'fullScaleCode',
  title: 'full-scale code',
  about: 'a broken wire: the input card tells the end of its scale; small now and then, large for all of that kind',
  onsetS: 0,
  repairS: 0,
  lastsS: staysUntilRepaired,
  fits: (_point, kind) => kind in codes,
  distort(round, order, strength) {
    const kind = round.kindOf(order.point);
    const code = codes[kind];
    if (code === undefined || strength < 0.5) return;
    const what = sizes[order.size];
    if (what === 'loose' && round.chance.uniform() >= looseShare) return;
    for (const point of round.told.keys()) {
      if (point === order.point || (what === 'card' && round.kindOf(point) === kind)) round.told.set(point, code);
    }
  },
};
