import { judgeBelow } from '../below';
import type { UnitEntry } from '../entry';
import { holdWhileBad } from '../hold-while-bad';
import { usable } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';

/**
 * Efficiencies are compared at flows that lie so near the rated one (share of it): on the same loop the ratio of flow to speed is then
 * the same too. Own rule.
 */
const nearRated = 0.15;

/** Pump efficiency below its commissioned figure by `limit` (a difference of ratios), mean of a day. */
export const pump3: UnitEntry = {
  id: 'PUMP-3',
  title: 'Pump efficiency has fallen',
  cause: 'Wear, a clogged impeller or strainer, gas in the water, or a fault of the power meter.',
  consequence: 'Energy is lost, and the pump is on its way to a failure.',
  action: {
    a: 'Plan an inspection of the transfer pump and its strainer while the standby runs. Isolate and lock out before it is opened.',
    b: 'Plan an inspection of the pump and its strainer between transfers, on the standby. Isolate and lock out before it is opened.',
    c: 'Plan an inspection of the circulation pump and its strainer while the standby runs. Isolate and lock out before it is opened.',
  },
  confirm: 'Compare flow, head and power with the commissioning record at the same speed.',
  timeToRespondS: 3 * 86_400,
  severity: 'minor',
  worse: null,
  latching: false,
  defaults: { limit: 0.1, deadband: 0.02, onDelayMs: 0, offDelayMs: 0 },
  unitOfMeasure: '1',
  basis: 'Efficiency as ISO 9906 defines it, compared at equal flow over speed; ten points are common practice.',
  feeds: ['pump.power', 'pump.discharge.pressure'],
  offInModes: stoppedModes,
  offWhenInferred: true,
  applies: (unit, slots) => slots.pumpEfficiency >= 0 && unit.design.commissioned.pumpEfficiency !== null,
  judge(context, limits, active, finding) {
    const { design } = context.unit;
    const { pumpEfficiency } = context.plant;
    const { loopFlow, transferFlow } = context.slots;
    const flowSlot = transferFlow >= 0 ? transferFlow : loopFlow;
    const flow = usable(context.state, flowSlot);
    const comparable = Math.abs(flow - design.ratedFlowM3PerS) <= nearRated * design.ratedFlowM3PerS;
    const efficiency = comparable ? usable(context.state, context.slots.pumpEfficiency) : Number.NaN;
    pumpEfficiency.push(context.unitIndex, efficiency, context.nowMs);
    finding.value = pumpEfficiency.mean(context.unitIndex);
    finding.limit = (design.commissioned.pumpEfficiency ?? Number.NaN) - limits.limit;
    const below = judgeBelow(finding.value, finding.limit, limits.deadband, active);
    const held = holdWhileBad(context.state, flowSlot, below);
    finding.verdict = holdWhileBad(context.state, context.slots.pumpEfficiency, held);
  },
};
