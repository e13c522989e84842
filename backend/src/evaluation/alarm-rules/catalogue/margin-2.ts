import { judgeBelow } from '../below';
import type { UnitEntry } from '../entry';
import { nodePressureFeeds } from '../node-pressure-feeds';
import { air1 } from './air-1';
import { water1 } from './water-1';
import { joined } from '../details/quantity-text';
import { isActive, placeOf, usable, type UnitContext } from '../judge-context';
import { Verdict } from '../verdict';
import { ventSign } from '../vent-sign';
import { ventedText, ventedUnderPermit } from '../vented-under-permit';

const signs = 'a permit is open, water has been found or air is coming in on this unit';

/** Vacuum margin gone, in the state that the loop is in now. Never suppressed by mode. */
export const margin2: UnitEntry = {
  id: 'MARGIN-2',
  title: 'Vacuum margin gone: a wetted place stands above ambient pressure',
  cause:
    'Supply tank regulator, bleed stuck while the tank refills, overfill, falling barometer with absolute set points, vacuum lost, or static head after a stop.',
  consequence: 'The loop is an ordinary pressurised one: an opening below this pressure lets water out.',
  action: {
    a: 'Keep the vacuum source running and lower the supply tank set pressure. If work on a branch is open, water has been found or air has come in: power off the servers of that branch and isolate it. Keep clear of water near live equipment.',
    b: 'Keep the vacuum source running and lower the discharge pressure of the tanks. If work on a branch is open, water has been found or air has come in: power off the servers of that branch and isolate it. Keep clear of water near live equipment.',
    c: 'Keep the vacuum source running and slow the circulation pump. If work on a branch is open, water has been found or air has come in: power off the servers of that branch and isolate it. Keep clear of water near live equipment.',
  },
  confirm: 'Look at the supply pressure and the barometer; look for water at the lowest place of the supply main.',
  timeToRespondS: 3 * 60,
  severity: 'major',
  worse: { severity: 'severe', timeToRespondS: 2 * 60, when: signs },
  latching: false,
  defaults: { limit: 0, deadband: 500, onDelayMs: 3000, offDelayMs: 5000 },
  unitOfMeasure: 'Pa',
  basis: 'Physics: below zero margin the pressure inside is above that outside.',
  // Those of the two signs too: without them it is never priority 1.
  feeds: [...new Set([...nodePressureFeeds, 'ambient.pressure', ...water1.feeds, ...air1.feeds])],
  offInModes: [],
  offWhenInferred: false,
  judge(context, limits, active, finding) {
    const slot = context.slots.vacuumMargin;
    finding.value = usable(context.state, slot);
    finding.limit = limits.limit;
    finding.verdict = judgeBelow(finding.value, limits.limit, limits.deadband, active);
    // Nearly always it is so, and then nobody asks where.
    if (finding.verdict === Verdict.no) return;
    finding.where = placeOf(context.state, context.holder, slot);
    finding.expected = ventedUnderPermit(context);
    finding.worse = hasSigns(context);
  },
  detail: (context) => joined(ventedText(context), ...isolate(context), ventSign(context)),
};

const hasSigns = (context: UnitContext): boolean =>
  isActive(context, 'WATER-1') || isActive(context, 'AIR-1') || context.permits.count[context.unitIndex] !== 0;

/** What makes it worse, and which branch to isolate for it. */
function isolate(context: UnitContext): (string | null)[] {
  const { air, permits, unit, unitIndex } = context;
  const open = permits.branchesOf(unitIndex).map((branch) => unit.branches[branch]?.name ?? '');
  const airAt = unit.branches[air.namedBranch[unitIndex] as number]?.name ?? null;
  return [
    open.length === 0 ? null : `A permit is open on ${open.join(', ')}: power off its servers and isolate it.`,
    !isActive(context, 'AIR-1')
      ? null
      : `Air is coming in: power off the servers of ${airAt ?? 'the branch that shows it'} and isolate it.`,
    isActive(context, 'WATER-1') ? whereWet(context) : null,
  ];
}

/** The unit's own tray stands below no branch: what drips there comes from the unit, or through its facility pipes. */
function whereWet({ slots, state, unit }: UnitContext): string {
  const inTray = usable(state, slots.trayWaterFound) >= 0.5;
  const elsewhere =
    usable(state, slots.waterFound) >= 0.5 || unit.branches.some(({ slot }) => usable(state, slot.waterFound) >= 0.5);
  return inTray && !elsewhere
    ? 'Water has been found in the unit’s own tray: no branch stands above it. Shut the facility water to this unit and look there.'
    : 'Water has been found: power off the servers of the branch above it and isolate it.';
}
