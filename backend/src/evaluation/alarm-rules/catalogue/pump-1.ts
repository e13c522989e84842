import type { UnitEntry } from '../entry';
import { usable, type UnitContext } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';
import { judgeMachine } from '../plant-signs/machine-lost';
import { powerLost, powerLostText } from '../plant-signs/power-lost';
import { pumpWanted } from '../plant-signs/pump-wanted';
import { durationText } from '../plant-signs/ride-through-text';

/** The transfer (or circulation) pump is meant to run and does not. How long there is, the supply tank says. */
export const pump1: UnitEntry = {
  id: 'PUMP-1',
  title: 'Transfer or circulation pump has stopped',
  cause: 'Tripped by overload, dry running or drive; power lost; or switched off on the spot.',
  consequence:
    'The supply tank runs empty while flow and chips look well; then the flow is gone at once. A pump that feeds the loop itself takes the flow with it, and chips throttle within a minute.',
  action: {
    a: 'Confirm that the standby transfer pump has started; start it by hand if it has not. If neither runs, shed load before the supply tank is empty.',
    b: 'Confirm that the standby pump has started and that the tanks still change over; start it by hand if it has not. If neither runs, shed load.',
    c: 'Confirm that the standby circulation pump has started; start it by hand if it has not. If neither runs, shed load at once: the flow stands.',
  },
  confirm:
    'Look at its drive or motor protection, at the level of the supply tank, and at the filter: no pressure drop, no flow.',
  timeToRespondS: 5 * 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 1, deadband: 0, onDelayMs: 2000, offDelayMs: 5000 },
  unitOfMeasure: '1',
  basis:
    'Discrete. The time to respond is what the supply tank still holds, or a minute where no standby runs and that is not known.',
  feeds: ['pump.running', 'pump.command'],
  offInModes: stoppedModes,
  offWhenInferred: false,
  computedTime: true,
  applies: (_unit, slots) => slots.pumpRunning >= 0,
  judge(context, limits, _active, finding) {
    finding.value = usable(context.state, context.slots.pumpRunning);
    finding.limit = limits.limit;
    finding.verdict = judgeMachine(finding.value, pumpWanted(context));
    finding.timeToRespondS = timeLeftS(context);
  },
  detail(context) {
    if (powerLost(context)) return powerLostText;
    const left = usable(context.state, context.slots.timeToEmpty);
    const water = Number.isNaN(left) ? '' : ` The supply tank is empty in ${durationText(left)}.`;
    return `${standbyRuns(context) ? 'The standby pump has taken over.' : 'No standby pump is seen to run.'}${water}`;
  },
};

/** Without a standby and without a level nothing is known: then as if it were little. */
const unknownLeftS = 60;

const standbyRuns = ({ slots, state }: UnitContext): boolean => usable(state, slots.pumpStandbyRunning) >= 0.5;

function timeLeftS(context: UnitContext): number {
  if (standbyRuns(context)) return Number.NaN;
  const left = usable(context.state, context.slots.timeToEmpty);
  return Number.isNaN(left) ? unknownLeftS : left;
}
