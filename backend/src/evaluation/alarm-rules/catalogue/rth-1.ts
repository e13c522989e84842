import { judgeAbove } from '../above';
import { everyShape, type UnitEntry } from '../entry';
import { keep, recall, usable, type UnitContext } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';
import { Verdict } from '../verdict';

const cell = { mean: 0, atMs: 1 } as const;
/** Chip sensors count in whole kelvins: their ratio is averaged over about so long, ms. Own rule. */
const averageMs = 600_000;

/** A plate’s resistance at equal flow above `limit` times its commissioned one, for an hour. One a plate. */
export const rth1: UnitEntry = {
  id: 'RTH-1',
  per: 'plate',
  title: 'Thermal resistance of a plate has risen',
  cause: 'Interface material dried out or pumped away, screws loose, or channels of this plate blocking.',
  consequence: 'This part throttles at full power, and in the next warm spell before.',
  action: everyShape(
    'Plan the service of this plate with the owner of the server. Flow falling with it points to a blockage, flow unchanged to the interface.',
  ),
  confirm: 'Compare with the other plates of the same server at the same power.',
  timeToRespondS: 3 * 86_400,
  severity: 'minor',
  worse: null,
  latching: false,
  defaults: { limit: 1.25, deadband: 0.05, onDelayMs: 3_600_000, offDelayMs: 3_600_000 },
  unitOfMeasure: '1',
  basis:
    'Resistance case to supply at equal flow against the commissioning record; a quarter is a proposal of this project.',
  feeds: ['plate.<id>.temperature', 'plate.<id>.power', 'supply.temperature'],
  offInModes: stoppedModes,
  offWhenInferred: true,
  applies: (_unit, slots, part) => (slots.plateResistanceRatio[part] ?? -1) >= 0,
  judge(context, limits, active, finding) {
    finding.value = averaged(context);
    finding.limit = limits.limit;
    finding.verdict = judgeAbove(finding.value, limits.limit, limits.deadband, active);
    if (finding.verdict === Verdict.yes) finding.where = context.unit.plates[context.part]?.name ?? null;
  },
};

/** Exponential mean, right at any rate of steps; a ratio that is not known leaves it as it was and says nothing. */
function averaged(context: UnitContext): number {
  const ratio = usable(context.state, context.slots.plateResistanceRatio[context.part] ?? -1);
  if (Number.isNaN(ratio)) return Number.NaN;
  const before = recall(context, cell.mean);
  const passedMs = context.nowMs - recall(context, cell.atMs);
  const mean = Number.isNaN(before) ? ratio : before + (ratio - before) * Math.min(1, passedMs / averageMs);
  keep(context, cell.mean, mean);
  keep(context, cell.atMs, context.nowMs);
  return mean;
}
