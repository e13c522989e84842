import { judgeAbove } from '../above';
import type { UnitEntry } from '../entry';
import { keep, recall, usable, type Finding, type UnitContext } from '../judge-context';
import { cycleOfTanksMs } from '../plant-signs/cycle-of-tanks';
import { ventSign } from '../vent-sign';
import { Verdict } from '../verdict';

/** Bleed or vent of the supply tank is not where it is told to be. `limit`: share of its stroke. */
export const vent1: UnitEntry = {
  id: 'VENT-1',
  title: 'Bleed of the supply tank not where it is told to be',
  cause: 'Stuck, its actuator or air supply failed, or moved by hand.',
  consequence:
    'When the tank refills with the bleed shut its gas is squeezed, and the whole supply side goes above ambient.',
  action: {
    a: 'Interrupt the refill of the supply tank and lower its set pressure. Then free the bleed by hand.',
    b: 'Interrupt the filling of the tank concerned and lower the discharge pressure. Then free the bleed by hand.',
    c: 'Interrupt the refill and slow the circulation pump. Then free the bleed by hand.',
  },
  confirm: 'Look at the actuator; compare the supply tank pressure with its set point.',
  timeToRespondS: 3 * 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 0.1, deadband: 0.05, onDelayMs: 5000, offDelayMs: 5000 },
  unitOfMeasure: '1',
  basis: 'Ideal gas: refilling 80 L of gas room by a half doubles its pressure. Position feedback is good to ±1 %.',
  feeds: ['supplyTank.vent.command', 'supplyTank.vent.position', 'supplyTank.pressure'],
  offInModes: [],
  offWhenInferred: false,
  applies: (_unit, slots) => slots.supplyTankVentCommand >= 0 && slots.supplyTankVentPosition >= 0,
  judge(context, limits, active, finding) {
    const { slots, state } = context;
    const command = usable(state, slots.supplyTankVentCommand);
    const position = usable(state, slots.supplyTankVentPosition);
    finding.value = position;
    finding.limit = command;
    finding.verdict = judgeAbove(Math.abs(position - command), limits.limit, limits.deadband, active);
    if (context.unit.shape === 'b') holdOverCycle(context, active, finding);
  },
  detail: (context) => ventSign(context),
};

/** When the bleed was last seen elsewhere than told. */
const cell = { seenMs: 0 } as const;

/** Alternating tanks tell their bleed to open and to shut once a cycle: one that stands agrees for a part of each. */
function holdOverCycle(context: UnitContext, active: boolean, finding: Finding): void {
  if (finding.verdict === Verdict.yes) keep(context, cell.seenMs, context.nowMs);
  const agreesForMs = context.nowMs - recall(context, cell.seenMs);
  if (active && finding.verdict === Verdict.no && agreesForMs < cycleOfTanksMs(context)) finding.verdict = Verdict.hold;
}
