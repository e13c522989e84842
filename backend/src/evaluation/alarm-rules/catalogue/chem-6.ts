import type { WaterParameterId } from '@ebbline/shared/contract/water-parameters';
import { judgeBand } from '../band';
import { everyShape, type UnitEntry } from '../entry';
import { Verdict } from '../verdict';
import { waterDetail } from '../water-detail';
import { waterParameterOf, waterValue } from '../water-in-force';
import { chemistryCaution, judgeParameters } from './chem-entry';

const judged: readonly WaterParameterId[] = ['chloride', 'sulfate', 'sulfide', 'hardness', 'residue', 'glycol'];

/** What a laboratory tells of the water beside the treatment: each by its own band. */
export const chem6: UnitEntry = {
  id: 'CHEM-6',
  title: 'Salts, hardness, residue or glycol outside their band',
  cause:
    'Facility water or untreated make-up came in, glycol was thinned by top-up or mixed too rich, or bacteria make sulfide.',
  consequence: 'Chloride and sulfate pit copper and steel, hardness scales hot plates; thin glycol feeds bacteria.',
  action: everyShape(
    `Have a second sample analysed; look at the make-up water and at the sum of levels. Correct by dilution or treatment as the water treater says. ${chemistryCaution}`,
  ),
  confirm: 'Compare with the make-up water and with the facility water: the one it resembles is where it comes from.',
  timeToRespondS: 86_400,
  severity: 'minor',
  worse: null,
  latching: false,
  defaults: { limit: Number.NaN, deadband: 0, onDelayMs: 600_000, offDelayMs: 600_000 },
  unitOfMeasure: null,
  basis:
    'Each by its own band: ASHRAE liquid cooling guidelines (from memory) or common practice; a site states its own.',
  feeds: [],
  offInModes: [],
  offWhenInferred: false,
  applies: (unit) => judged.some((id) => waterParameterOf(unit, id) !== null),
  judge({ state, unit }, _limits, active, finding) {
    judgeParameters(state, unit, judged, active, finding, ({ band, id }) => {
      const value = waterValue(state, unit, id);
      const verdict = judgeBand(value, band.low, band.high, 0, active);
      return { verdict, value, limit: verdict === Verdict.yes && value > band.high ? band.high : band.low };
    });
  },
  detail: (context) => waterDetail(context, judged),
};
