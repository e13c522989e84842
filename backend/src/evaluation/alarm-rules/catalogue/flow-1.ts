import { judgeBelow } from '../below';
import { flowText, freeAirText, joined } from '../details/quantity-text';
import type { UnitEntry } from '../entry';
import { usable, type UnitContext } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';
import { saysNothing } from '../says-nothing';
import { Verdict } from '../verdict';

/** Loop flow below what driving pressure and commissioned resistance give. `limit`: share of that flow. */
export const flow1: UnitEntry = {
  id: 'FLOW-1',
  title: 'Loop flow below what its driving pressure gives',
  cause: 'Gas in the return, a blockage or strainer, or a valve that is not as it was.',
  consequence: 'Plates get hot; the controls hide it by more driving pressure until they can no more.',
  action: {
    a: 'Look at the gas load first: gas in the return chokes it. If that is as usual, look for a valve or strainer that is not as it was.',
    b: 'Look at the gas load first, over whole tank cycles: gas in the return chokes it. If that is as usual, look for a valve or strainer that is not as it was.',
    c: 'Look at the gas load first: gas in the return chokes it. If that is as usual, look for a valve or strainer that is not as it was.',
  },
  confirm: 'Compare the branch flows: one alone is low with a blocked branch, all of them with a blocked main or gas.',
  timeToRespondS: 5 * 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 0.85, deadband: 0.03, onDelayMs: 15_000, offDelayMs: 30_000 },
  unitOfMeasure: '1',
  basis: 'Proposal of this project: 15 % of flow is 30 % of resistance, well beyond meters of 1 %.',
  feeds: ['loop.flow', 'supplyTank.pressure', 'separator.pressure', 'supply.pressure', 'return.pressure'],
  offInModes: stoppedModes,
  offWhenInferred: true,
  applies: (_unit, slots) => slots.flowShare >= 0,
  judge(context, limits, active, finding) {
    const slot = context.slots.flowShare;
    finding.value = usable(context.state, slot);
    finding.limit = limits.limit;
    finding.verdict = saysNothing(context.state, slot)
      ? Verdict.no
      : judgeBelow(finding.value, limits.limit, limits.deadband, active);
  },
  detail: (context) => joined(flowNow(context), gasNow(context)),
};

function flowNow({ slots, state }: UnitContext): string | null {
  const flow = usable(state, slots.loopFlow);
  const expected = usable(state, slots.expectedFlow);
  return Number.isNaN(flow + expected) ? null : `${flowText(flow)} flow where ${flowText(expected)} are expected.`;
}

function gasNow({ slots, state }: UnitContext): string | null {
  const excess = usable(state, slots.gasLoad) - usable(state, slots.gasAllowance);
  if (Number.isNaN(excess)) return null;
  return excess > tellingGasM3PerS
    ? `Gas load is ${freeAirText(excess)} above what is accounted for: look for air first.`
    : 'Gas load is as accounted for: look at valves and strainers.';
}

/** Below that, gas does not choke a return: free m³/s. Own rule. */
const tellingGasM3PerS = 5 / 60_000;
