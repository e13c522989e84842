import { waterParameters } from '@ebbline/shared/contract/water-parameters';
import { everyShape, type UnitEntry } from '../entry';
import { Verdict } from '../verdict';
import { isOverdue } from '../water-in-force';
import { chemistryCaution } from './chem-entry';

/** A value that people type is due: nobody has typed one yet, or the newest is older than its interval. */
export const chem7: UnitEntry = {
  id: 'CHEM-7',
  title: 'A sample of the water is due',
  cause: 'Nobody has drawn and typed one within its interval.',
  consequence: 'What the water does to plates, hoses and inhibitor goes unseen.',
  action: everyShape(
    `Draw a sample, have it analysed, and type its values with the time at which it was drawn. ${chemistryCaution}`,
  ),
  confirm: 'Look when the last entry of each parameter was taken.',
  timeToRespondS: 86_400,
  severity: 'minor',
  worse: null,
  latching: false,
  // An hour, so that whoever has just set up a site can type first.
  defaults: { limit: Number.NaN, deadband: 0, onDelayMs: 3_600_000, offDelayMs: 0 },
  unitOfMeasure: null,
  basis: 'The interval of the site file, by parameter (`water`).',
  feeds: [],
  offInModes: [],
  offWhenInferred: false,
  applies: ({ water }) => water.parameters.some(({ dueMs, handSlot }) => handSlot >= 0 && !Number.isNaN(dueMs)),
  judge({ state, unit }, _limits, _active, finding) {
    finding.verdict = Verdict.no;
    for (const parameter of unit.water.parameters) {
      if (!isOverdue(state, parameter)) continue;
      finding.verdict = Verdict.yes;
      finding.where ??= parameter.id;
    }
  },
  detail({ state, unit }) {
    const due = unit.water.parameters.filter((parameter) => isOverdue(state, parameter));
    return due.length === 0 ? null : `Due: ${due.map(({ id }) => waterParameters[id].title).join('; ')}.`;
  },
};
