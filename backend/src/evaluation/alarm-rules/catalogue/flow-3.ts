import { airWasToldAt } from '../air-step/second-opening';
import { judgeBelow } from '../below';
import { flowText, joined, pressureText } from '../details/quantity-text';
import type { UnitEntry } from '../entry';
import { unitEntryPlace } from '../entry-ids';
import { isActive, usable, type UnitContext } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';
import { saysNothing } from '../says-nothing';
import { Verdict } from '../verdict';

/**
 * Flow of one branch below its share of what flows. `limit`: share. Without air signs: while AIR-1 names this branch, or did before it named
 * another, it stays as it was. Not for a branch that is isolated, nor for one with an open permit.
 */
export const flow3: UnitEntry = {
  id: 'FLOW-3',
  per: 'branch',
  title: 'Branch flow below its share',
  cause: 'A valve partly closed, a blocked plate or strainer, or an air pocket that has stayed in the branch.',
  consequence: 'The chips of this rack run hot.',
  action: {
    a: 'Check the valves of the named branch; pulse its flow to move an air pocket; move load away meanwhile.',
    b: 'Check the valves of the named branch; wait for a tank cycle or two, as a gas pocket may move; move load away meanwhile.',
    c: 'Check the valves of the named branch; pulse its flow to move an air pocket; move load away meanwhile.',
  },
  confirm: 'Return pressure of the branch: lower than usual where it is blocked, higher where air comes in.',
  timeToRespondS: 10 * 60,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: 0.8, deadband: 0.05, onDelayMs: 60_000, offDelayMs: 60_000 },
  unitOfMeasure: '1',
  basis: 'Proposal of this project: one blocked plate of a rack moves its flow by 0.6 %, one blocked rack by 40 %.',
  feeds: ['branch.<id>.flow'],
  offInModes: stoppedModes,
  offWhenInferred: true,
  applies: (_unit, slots, part) => (slots.branchFlowShare[part] ?? -1) >= 0,
  judge(context, limits, active, finding) {
    const slot = context.slots.branchFlowShare[context.part] ?? -1;
    finding.value = usable(context.state, slot);
    finding.limit = limits.limit;
    if (airComesInHere(context)) return;
    finding.verdict =
      saysNothing(context.state, slot) || hasPermit(context)
        ? Verdict.no
        : judgeBelow(finding.value, limits.limit, limits.deadband, active);
    if (finding.verdict === Verdict.yes) finding.where = context.unit.branches[context.part]?.name ?? null;
  },
  detail: ({ part, slots, state, unit }) => {
    const branch = unit.branches[part];
    const flow = usable(state, branch?.slot.flow ?? -1);
    const share = usable(state, slots.branchFlowShare[part] ?? -1);
    const pressure = usable(state, branch?.slot.returnPressure ?? -1);
    return joined(
      Number.isNaN(flow + share) ? null : `${flowText(flow)}, ${((1 - share) * 100).toFixed(0)} % below its share.`,
      Number.isNaN(pressure) ? null : `Its return stands at ${pressureText(pressure)}.`,
    );
  },
};

const airComesInHere = (context: UnitContext): boolean =>
  isActive(context, 'AIR-1') &&
  airWasToldAt(
    context.air,
    context.memory,
    context.unitIndex,
    context.activeFrom + unitEntryPlace['AIR-1'],
    context.part,
  );

const hasPermit = ({ part, permits, unitIndex }: UnitContext): boolean =>
  permits.count[unitIndex] !== 0 &&
  (permits.wholeLoop[unitIndex] === 1 || permits.branchesOf(unitIndex).includes(part));
