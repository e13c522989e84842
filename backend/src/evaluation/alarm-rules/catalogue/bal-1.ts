import { judgeAbove } from '../above';
import { everyShape, type UnitEntry } from '../entry';
import { usable } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';

/** Heat found in two places differs by more than `limit` standard uncertainties, with inputs of good quality. */
export const bal1: UnitEntry = {
  id: 'BAL-1',
  title: 'Heat balance does not close',
  cause:
    'A meter off, a bypass open, sensors of two units or of supply and return swapped, or a wrong unit of measure.',
  consequence: 'Heat, capture and UA of this unit are not to be trusted, nor what is concluded from them.',
  action: everyShape(
    'Check the flow meters and the pairs of temperature sensors: without flow every pair agrees and every flow reads zero.',
  ),
  confirm: 'Compare with the neighbouring units, and look for a bypass that stands open.',
  timeToRespondS: 3 * 86_400,
  severity: 'minor',
  worse: null,
  latching: false,
  defaults: { limit: 3, deadband: 0.5, onDelayMs: 15 * 60_000, offDelayMs: 15 * 60_000 },
  unitOfMeasure: '1',
  basis: 'Difference over its standard uncertainty (JCGM 100); three of them are common practice.',
  feeds: ['loop.flow', 'supply.temperature', 'return.temperature', 'facility.flow'],
  offInModes: [...stoppedModes, 'starting', 'powerReturn'],
  offWhenInferred: true,
  applies: (_unit, slots) => slots.heatBalanceSignificance >= 0,
  judge({ slots, state }, limits, active, finding) {
    const slot = slots.heatBalanceSignificance;
    const isGood = state.reasons[slot] === 0;
    finding.value = isGood ? usable(state, slot) : Number.NaN;
    finding.limit = limits.limit;
    finding.verdict = judgeAbove(Math.abs(finding.value), limits.limit, limits.deadband, active);
  },
};
