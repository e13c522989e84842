import type { WaterParameterId } from '@ebbline/shared/contract/water-parameters';
import { judgeBand } from '../band';
import type { Limits, UnitEntry } from '../entry';
import { Verdict } from '../verdict';
import { waterDetail } from '../water-detail';
import { waterParameterOf, waterValue } from '../water-in-force';
import { chemistryEntry, judgeParameters } from './chem-entry';

const inhibitors: readonly WaterParameterId[] = ['inhibitor', 'molybdate', 'nitrite', 'azole'];
const metals: readonly WaterParameterId[] = ['copper', 'iron'];
const judged = [...inhibitors, ...metals];

/** `low` is the least inhibitor, `limit` the most copper; molybdate, nitrite, azole and iron have bands of their own. */
export const chem4: UnitEntry = {
  ...chemistryEntry({
    id: 'CHEM-4',
    title: 'Inhibitor outside its band, or metal in the water',
    cause:
      'Inhibitor eaten by oxygen or bacteria, thinned by top-up or by facility water, or dosed too much; copper or iron corroding.',
    consequence: 'Plates and pipes corrode; what comes off blocks narrow channels.',
    action:
      'Take a sample, look whether water comes in from the facility side, and bring the inhibitor that the loop has back into its band.',
    confirm: 'Have a sample analysed; compare the metal with the last one: the rise tells more than the value.',
    basis:
      'Copper: action above 0.2 mg/L (water-treatment practice, from memory). Inhibitor: by its maker, so there is no default. Molybdate is counted as Mo, nitrite as NO₂.',
    unitOfMeasure: 'kg/m3',
    low: Number.NaN,
    limit: 0.0002,
    deadband: 0,
    feeds: ['water.inhibitor', 'water.copper', 'water.molybdate'],
    parameter: 'inhibitor',
  }),
  applies: (unit) => judged.some((id) => waterParameterOf(unit, id) !== null),
  judge({ state, unit }, limits, active, finding) {
    judgeParameters(state, unit, judged, active, finding, (parameter) => {
      const value = waterValue(state, unit, parameter.id);
      const { low, high } = endsOf(parameter.id, parameter.band, limits);
      const verdict = judgeBand(value, low, high, limits.deadband, active);
      return { verdict, value, limit: verdict === Verdict.yes && value > high ? high : low };
    });
  },
  detail: (context) => waterDetail(context, judged),
};

function endsOf(
  id: WaterParameterId,
  band: { low: number; high: number },
  limits: Limits,
): { low: number; high: number } {
  if (id === 'inhibitor') return { low: limits.low ?? Number.NaN, high: band.high };
  return id === 'copper' ? { low: band.low, high: limits.limit } : band;
}
