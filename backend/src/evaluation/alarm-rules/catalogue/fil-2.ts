import { judgeAbove } from '../above';
import { anyOf } from '../any-of';
import type { UnitEntry } from '../entry';
import { holdWhileBad } from '../hold-while-bad';
import { usable } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';
import { durationText } from '../plant-signs/ride-through-text';
import { Verdict } from '../verdict';

/** Of what the element is rated for. */
export const shareOfRating = 0.8;

/** Filter about full: above `limit` times clean, or at 0.8 of the element’s rating; mean of ten minutes. */
export const fil2: UnitEntry = {
  id: 'FIL-2',
  title: 'Filter is nearly blocked',
  cause: 'Particles after works, slime, or products of corrosion; a change that was put off.',
  consequence: 'The element bursts or its bypass opens, and plates take the dirt; or the supply tank runs empty.',
  action: {
    a: 'Change over to the clean filter now. Isolate, relieve and lock out the full one before it is opened: it stands above ambient pressure while the pump runs.',
    b: 'Change over to the clean filter now. Isolate, relieve and lock out the full one before it is opened: it may stand above ambient pressure.',
    c: 'Change over to the clean filter now. Isolate, relieve and lock out the full one before it is opened: it stands above ambient pressure while the pump runs.',
  },
  confirm: 'Read the pressure drop at the filter itself, and look at pump speed and supply tank level.',
  timeToRespondS: 15 * 60,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: 3, deadband: 0.3, onDelayMs: 0, offDelayMs: 60_000 },
  unitOfMeasure: '1',
  basis: 'Three times clean and four fifths of the element’s rating are common practice.',
  feeds: ['filter.pressureDrop', 'transfer.flow', 'loop.flow'],
  offInModes: stoppedModes,
  offWhenInferred: true,
  applies: (_unit, slots) => slots.filterPressureDrop >= 0,
  judge(context, limits, active, finding) {
    const { plant, slots, state, unitIndex } = context;
    const rated = context.unit.design.filterRatingPa;
    finding.value = plant.filterResistance.mean(unitIndex);
    finding.limit = limits.limit;
    const loaded =
      slots.filterResistance < 0
        ? Verdict.no
        : holdWhileBad(state, slots.filterResistance, judgeAbove(finding.value, limits.limit, limits.deadband, active));
    if (rated === null) {
      finding.verdict = loaded;
      return;
    }
    const drop = plant.filterPressureDrop.mean(unitIndex);
    const limitPa = shareOfRating * rated;
    const full = holdWhileBad(state, slots.filterPressureDrop, judgeAbove(drop, limitPa, 0.05 * limitPa, active));
    finding.verdict = anyOf(loaded, full);
    if (full !== Verdict.yes || loaded === Verdict.yes) return;
    finding.value = drop;
    finding.limit = limitPa;
    finding.unitOfMeasure = 'Pa';
  },
  detail({ slots, state }) {
    const left = usable(state, slots.timeToEmpty);
    return Number.isNaN(left) ? null : `The supply tank is empty in ${durationText(left)} at its present rate.`;
  },
};
