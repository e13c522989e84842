import type { UnitEntry } from '../entry';
import { usable } from '../judge-context';
import { judgeMachine } from '../plant-signs/machine-lost';
import { powerLost, powerLostText } from '../plant-signs/power-lost';
import { sealWaterSign } from '../plant-signs/seal-water-sign';
import { vacuumWanted, withoutVacuum } from '../plant-signs/vacuum-wanted';

/** The vacuum source is meant to run and does not. A source that is started and stopped rests between its cycles: no trip. */
export const vsrc1: UnitEntry = {
  id: 'VSRC-1',
  title: 'Vacuum source has stopped',
  cause: 'Tripped by overload, seal water, trap or drive; power lost; or switched off on the spot.',
  consequence:
    'The vacuum holds for a while and then runs out: flow sinks, and the next opening is not carried by any source.',
  action: {
    a: 'Confirm that the standby vacuum source has started; start it by hand if it has not. Find the cause before the first one is started again.',
    b: 'Confirm that the standby vacuum source has started and that the tanks still fill; start it by hand if it has not. Find the cause before the first one is started again.',
    c: 'Confirm that the standby vacuum source holds the reservoir; start it by hand if it does not. Find the cause before the first one is started again.',
  },
  confirm: 'Look at its drive or motor protection, and whether the separator pressure rises.',
  timeToRespondS: 5 * 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 1, deadband: 0, onDelayMs: 2000, offDelayMs: 5000 },
  unitOfMeasure: '1',
  basis:
    'Discrete. A check valve holds the vacuum for minutes: 0.2 kPa a minute at 1 free L/min into 510 L (ideal gas).',
  feeds: ['vacuum.running', 'vacuum.command'],
  offInModes: withoutVacuum,
  offWhenInferred: false,
  applies: (_unit, slots) => slots.vacuumRunning >= 0,
  judge(context, limits, _active, finding) {
    finding.value = usable(context.state, context.slots.vacuumRunning);
    finding.limit = limits.limit;
    finding.verdict = judgeMachine(finding.value, vacuumWanted(context));
  },
  detail(context) {
    if (powerLost(context)) return powerLostText;
    const standby = usable(context.state, context.slots.vacuumStandbyRunning);
    const takenOver =
      standby >= 0.5
        ? 'The standby source has taken over.'
        : standby < 0.5
          ? `No standby source runs${usable(context.state, context.slots.vacuumAvailable) < 0.5 ? ', and none is available' : ''}.`
          : 'Whether a standby runs is not known.';
    const sign = sealWaterSign(context);
    return sign === null ? takenOver : `${takenOver} ${sign}`;
  },
};
