import { pressureText } from '../details/quantity-text';
import type { UnitEntry } from '../entry';
import { recall, usable, type UnitContext } from '../judge-context';
import { runningMean } from '../running-mean';
import { Verdict } from '../verdict';

/** Means of the temperature, each in two cells. */
const cell = { minute: 0, slow: 2 } as const;

/** Servers that idle still give off this share of a branch's rated heat, or so much where none is stated, W. Own rule. */
const idleShare = 0.02;
const idleW = 200;
/**
 * Warming: above its own mean of the last minute by so much, K, or that mean above the one of ten minutes. A steady rise stays
 * above by nine minutes of it, so 1.3 K an hour are seen; of water that stands still in noise nothing is. Own rule.
 */
const warmingK = 0.2;
/** No longer: less than a quarter of that. */
const stillWarmingK = 0.05;
const minuteMs = 60_000;
const slowMs = 600_000;

/**
 * A branch is valved off and its servers are on, or its water warms: no suction reaches it, and trapped water that warms passes
 * ambient pressure and weeps. Never suppressed by mode. Where neither heat nor temperature is known it is told as an alert.
 */
export const isol1: UnitEntry = {
  id: 'ISOL-1',
  per: 'branch',
  title: 'Isolated branch is loaded or warming: not protected',
  cause: 'Valved off for work with its servers left on.',
  consequence:
    'The trapped water warms and expands; its pressure passes ambient and it weeps, whatever the margin of the loop is.',
  action: {
    a: 'Power off the servers of the named branch; then relieve it to the loop by opening its return valve a little. Hot water under pressure: open nothing else. Keep clear of water near live equipment.',
    b: 'Power off the servers of the named branch; then relieve it to the loop by opening its return valve a little. Hot water under pressure: open nothing else. Keep clear of water near live equipment.',
    c: 'Power off the servers of the named branch; then relieve it to the loop by opening its return valve a little. Hot water under pressure: open nothing else. Keep clear of water near live equipment.',
  },
  confirm: 'Look at the valves of the branch, at its temperature, and for water below it. Hot pipes: mind burns.',
  timeToRespondS: 10 * 60,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: Number.NaN, deadband: 0, onDelayMs: 5000, offDelayMs: 30_000 },
  unitOfMeasure: 'Cel',
  basis:
    'Trapped water gains about 0.5 MPa for each kelvin in rigid pipe (thermal expansion over compressibility of water); hoses give, and weep.',
  feeds: ['branch.<id>.isolated', 'branch.<id>.power', 'branch.<id>.return.temperature'],
  offInModes: [],
  offWhenInferred: false,
  applies: (unit, _slots, part) => (unit.branches[part]?.slot.isolated ?? -1) >= 0,
  judge(context, _limits, active, finding) {
    const { part, state, unit } = context;
    const branch = unit.branches[part];
    if (branch === undefined) return;
    finding.where = branch.name;
    const isolated = usable(state, branch.slot.isolated);
    const temperature = usable(state, branch.slot.returnTemperature);
    const minute = runningMean(context, cell.minute, temperature, minuteMs);
    const slow = runningMean(context, cell.slow, temperature, slowMs);
    finding.value = temperature;
    if (Number.isNaN(isolated)) return;
    if (isolated < 0.5) {
      finding.verdict = Verdict.no;
      return;
    }
    const loaded = isLoaded(context);
    const warming = Number.isNaN(temperature)
      ? null
      : warms(temperature, minute, slow, active ? stillWarmingK : warmingK);
    // Not known from the start: an alert. An alarm stands where what is known of it is lost: that ends nothing.
    finding.expected = !active && loaded === null && warming === null;
    // Where one of the two is not known the other decides; where it says no, that much is not known to be over.
    if (loaded === true || warming === true || finding.expected) finding.verdict = Verdict.yes;
    else if (loaded !== null && warming !== null) finding.verdict = Verdict.no;
    else if (!active) finding.verdict = Verdict.no;
  },
  detail(context) {
    const { part, state, unit } = context;
    const branch = unit.branches[part];
    const temperature = usable(state, branch?.slot.returnTemperature ?? -1);
    const pressure = usable(state, branch?.slot.returnPressure ?? -1);
    const power = usable(state, branch?.slot.power ?? -1);
    const isWarming = warms(temperature, recall(context, cell.minute), recall(context, cell.slow), stillWarmingK);
    const warm = Number.isNaN(temperature) ? '' : `, ${temperature.toFixed(0)} °C${isWarming ? ' and warming' : ''}`;
    const more = [
      ...(Number.isNaN(power) ? [] : [`${(power / 1000).toFixed(1)} kW on`]),
      ...(Number.isNaN(pressure) ? [] : [`at ${pressureText(pressure)}`]),
    ];
    return `Isolated rack, not protected${warm}${more.length === 0 ? '' : ` (${more.join(', ')})`}. The margin of the loop does not hold for it.`;
  },
};

const warms = (temperature: number, minute: number, slow: number, byK: number): boolean =>
  temperature > minute + byK || minute > slow + byK;

function isLoaded({ part, state, unit }: UnitContext): boolean | null {
  const power = usable(state, unit.branches[part]?.slot.power ?? -1);
  if (Number.isNaN(power)) return null;
  const rated = unit.design.ratedHeatW;
  return power > (rated === null ? idleW : (idleShare * rated) / unit.branches.length);
}
