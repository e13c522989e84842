import { judgeAbove } from '../above';
import { everyShape, type UnitEntry } from '../entry';
import { usable } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';
import { heatOtherWayW, negativeHeatSignificance, supplyOfSwappedPair } from '../plant-signs/swapped-pair';
import { Verdict } from '../verdict';

/**
 * Supply reads above return with chips loaded and flow good: water that cools chips cannot come back colder. `limit`: standard
 * uncertainties of the difference. TSUP is held back only where `supplyOfSwappedPair` is certain and that supply is within its limit.
 */
export const ins3: UnitEntry = {
  id: 'INS-3',
  title: 'Supply and return temperature look swapped',
  cause: 'The two sensors were exchanged at the terminals or in the pockets; or one of them is far off.',
  consequence:
    'Heat removed is negative, and the supply temperature is that of the return: supply alarms, condensation and fouling are not to be trusted.',
  action: everyShape(
    'Compare both with a hand instrument or with the branch temperatures, and put the terminals right. Until then read the two the other way round.',
  ),
  confirm: 'Branch return and chip temperatures stand as before, and chip power and flow have not moved.',
  timeToRespondS: 3600,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: 3, deadband: 0.5, onDelayMs: 60_000, offDelayMs: 60_000 },
  unitOfMeasure: '1',
  basis: 'Energy balance: heat flows from chips to water. Three standard uncertainties (JCGM 100) are common practice.',
  feeds: ['supply.temperature', 'return.temperature', 'loop.flow', 'plate.<id>.power', 'branch.<id>.power'],
  offInModes: [...stoppedModes, 'starting', 'powerReturn'],
  offWhenInferred: true,
  applies: (_unit, slots) => slots.supplyTemperature >= 0 && slots.returnTemperature >= 0,
  judge(context, limits, active, finding) {
    finding.value = negativeHeatSignificance(context);
    finding.limit = limits.limit;
    finding.where = 'supply.temperature';
    finding.verdict = Number.isNaN(finding.value)
      ? Verdict.hold
      : judgeAbove(finding.value, limits.limit, limits.deadband, active);
  },
  detail(context) {
    const { slots, state } = context;
    const [supply, back] = [usable(state, slots.supplyTemperature), usable(state, slots.returnTemperature)];
    if (Number.isNaN(supply) || Number.isNaN(back)) return null;
    const reads = `Supply reads ${supply.toFixed(1)} °C, return ${back.toFixed(1)} °C.`;
    if (Number.isNaN(supplyOfSwappedPair(context))) return `${reads} One of the two may be off.`;
    const heat = (heatOtherWayW(context) / 1000).toFixed(0);
    const chips = (usable(state, slots.chipPower) / 1000).toFixed(0);
    return `${reads} The other way round the water takes up ${heat} kW, and the chips give off ${chips} kW: swapped.`;
  },
};
