import { clockTime } from '../details/clock-time';
import { flowText, joined, pressureText } from '../details/quantity-text';
import type { UnitEntry } from '../entry';
import { judgeBelow } from '../below';
import { usable, type UnitContext } from '../judge-context';
import { durationText } from '../plant-signs/ride-through-text';
import { saysNothing } from '../says-nothing';
import { Verdict } from '../verdict';

/** A transfer pump counts as at full speed from here on. */
const fullSpeed = 0.97;
/** And as standing below this, where no contact tells whether it runs. Own rule. */
const standingSpeed = 0.02;
/** A filter that has loaded so far is worth naming. */
const loadedFilter = 1.5;

/**
 * The supply tank falls and the transfer pump can give no more: the time until it is empty is below `limit`, s. How long there is
 * to respond is that time. Flow, chips and pressures look well until then.
 */
export const tank1: UnitEntry = {
  id: 'TANK-1',
  title: 'Supply tank runs empty',
  cause: 'Filter before it loaded, transfer pump worn or stopped, or a transfer that comes late.',
  consequence: 'The flow stops at once when the tank is empty; nothing else shows it before.',
  action: {
    a: 'Change over the filter, or the transfer pump, before the time shown; prepare to shed load.',
    b: 'See why the tanks do not fill in their usual time: filter, valves, vacuum; prepare to shed load.',
    c: 'See why the circulation pump draws more than comes back: filter, valves; prepare to shed load.',
  },
  confirm: 'Watch the level of the supply tank at the sight glass, and the filter’s pressure drop at its flow.',
  timeToRespondS: 10 * 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 30 * 60, deadband: 5 * 60, onDelayMs: 15_000, offDelayMs: 60_000 },
  unitOfMeasure: 's',
  basis: 'Conservation of water; the time is worked out only where the level surely falls.',
  feeds: ['supplyTank.level', 'pump.speed', 'pump.running', 'transfer.flow'],
  offInModes: ['off', 'vented', 'tightnessTest', 'draining'],
  offWhenInferred: false,
  computedTime: true,
  applies: (_unit, slots) => slots.timeToEmpty >= 0,
  judge(context, limits, active, finding) {
    const { slots, state } = context;
    finding.value = usable(state, slots.timeToEmpty);
    finding.limit = limits.limit;
    const catchesUp = pumpCatchesUp(context);
    if (saysNothing(state, slots.timeToEmpty) || catchesUp === true) {
      finding.verdict = Verdict.no;
      return;
    }
    if (catchesUp === null && active) return;
    finding.verdict = judgeBelow(finding.value, limits.limit, limits.deadband, active);
    finding.timeToRespondS = finding.value;
  },
  detail(context) {
    const { nowMs, site, slots, state } = context;
    const left = usable(state, slots.timeToEmpty);
    const rate = usable(state, slots.supplyTankRate);
    const filter = usable(state, slots.filterResistance);
    return joined(
      Number.isNaN(left)
        ? null
        : `Tank empty at ${clockTime(nowMs + left * 1000, site.timeZone)}, in ${durationText(left)}.`,
      pressedOut(context),
      rate < 0 ? `It loses ${flowText(-rate)}.` : null,
      filter > loadedFilter ? `The filter is at ${filter.toFixed(1)} times its clean resistance.` : null,
    );
  },
};

/** A tank so far above its set point drives more out than the pump brings, Pa: own rule. */
const pressedPa = 2000;

/** Not the filter nor the pump: gas presses the water out. */
function pressedOut({ slots, state }: UnitContext): string | null {
  const above = usable(state, slots.supplyTankPressure) - usable(state, slots.supplyTankSetPoint);
  return above > pressedPa
    ? `The tank stands ${pressureText(above)} above its set point: look at its bleed before filter and pump.`
    : null;
}

/** The pump runs and has speed left: the control brings the level back. Null where its feedback is bad, and that is not known. */
function pumpCatchesUp({ slots, state }: UnitContext): boolean | null {
  const speed = usable(state, slots.pumpSpeed);
  if (!(speed < fullSpeed)) return false;
  if (slots.pumpRunning < 0) return speed >= standingSpeed;
  const running = usable(state, slots.pumpRunning);
  if (Number.isNaN(running)) return null;
  return !(running < 0.5);
}
