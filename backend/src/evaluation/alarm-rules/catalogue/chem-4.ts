import { judgeAbove } from '../above';
import { anyOf } from '../any-of';
import { judgeBelow } from '../below';
import type { UnitEntry } from '../entry';
import { usable } from '../judge-context';
import { Verdict } from '../verdict';
import { chemistryEntry } from './chem-entry';

/** `low` is the least inhibitor, `limit` the most copper. */
export const chem4: UnitEntry = {
  ...chemistryEntry({
    id: 'CHEM-4',
    title: 'Inhibitor low, or copper in the water',
    cause: 'Inhibitor eaten by oxygen or bacteria, thinned by top-up or by facility water; copper corroding.',
    consequence: 'Plates and pipes corrode; what comes off blocks narrow channels.',
    action:
      'Take a sample, look whether water comes in from the facility side, and dose the inhibitor that the loop has.',
    confirm: 'Have a sample analysed; compare copper with the last one: the rise tells more than the value.',
    basis:
      'Copper: action above 0.2 mg/L (water-treatment practice, from memory). Inhibitor: by its maker, so there is no default.',
    unitOfMeasure: 'kg/m3',
    low: Number.NaN,
    limit: 0.0002,
    deadband: 0,
    feeds: ['water.inhibitor', 'water.copper'],
    slot: (slots) => slots.waterInhibitor,
  }),
  applies: (_unit, slots) => slots.waterInhibitor >= 0 || slots.waterCopper >= 0,
  judge({ slots, state }, limits, active, finding) {
    const low = limits.low ?? Number.NaN;
    const inhibitor = usable(state, slots.waterInhibitor);
    const copper = usable(state, slots.waterCopper);
    const thin =
      slots.waterInhibitor < 0 || Number.isNaN(low) ? Verdict.no : judgeBelow(inhibitor, low, limits.deadband, active);
    const corrodes = slots.waterCopper < 0 ? Verdict.no : judgeAbove(copper, limits.limit, limits.deadband, active);
    finding.verdict = anyOf(thin, corrodes);
    const byCopper = corrodes === Verdict.yes;
    finding.value = byCopper ? copper : inhibitor;
    finding.limit = byCopper ? limits.limit : low;
    finding.where = byCopper ? 'copper' : 'inhibitor';
  },
};
