import { lowerWallGuardAt } from '../../derive/nearest-lower-wall';
import { judgeBelow } from '../below';
import type { UnitEntry } from '../entry';
import { nodePressureFeeds } from '../node-pressure-feeds';
import { guard, placeOf, usable, type UnitContext } from '../judge-context';
import { holdUnseenPlate } from '../plant-signs/plate-wall-unseen';
import { Verdict } from '../verdict';

/**
 * The nearest lower wall, less its expanded uncertainty, is within its guard: boiling at a node, the pump's inlet, or the hot plate wall. Never
 * suppressed by mode. Each kind of wall has a guard of its own; a limit in the site file stands for all of them.
 */
export const boil1: UnitEntry = {
  id: 'BOIL-1',
  title: 'Close to boiling or pump cavitation',
  cause: 'Pressure drawn too low, return water too hot, separator level low, or the strainer before the pump loading.',
  consequence: 'The pump cavitates or the water boils: gas at the plates, then flow is lost.',
  action: {
    a: 'Raise the set pressure of the separator by a few kPa and cool the return: shed load or give more facility water. Watch the vacuum margin while you do.',
    b: 'Raise the filling pressure of the tanks by a few kPa and cool the return: shed load or give more facility water. Watch the vacuum margin while you do.',
    c: 'Raise the set pressure of the vacuum reservoir by a few kPa and cool the return: shed load or give more facility water. Watch the vacuum margin while you do.',
  },
  confirm:
    'Compare the pressure at the named place with the vapour pressure at its temperature; listen at the pump for gravel-like noise. Hot pipes: mind burns.',
  timeToRespondS: 5 * 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: Number.NaN, deadband: 500, onDelayMs: 15_000, offDelayMs: 15_000 },
  unitOfMeasure: 'Pa',
  basis:
    'Guards of derive/derive-constants.ts: 10 kPa above boiling at a node or a plate wall (common practice), 1 kPa above the NPSH limit (own rule), each with the expanded uncertainty of the margin taken off first.',
  feeds: [...nodePressureFeeds, 'pump.inlet.pressure'],
  offInModes: [],
  offWhenInferred: false,
  judge(context, limits, active, finding) {
    const slot = context.slots.lowerWallMargin;
    finding.value = usable(context.state, slot) - guard(context.state, slot);
    finding.limit = Number.isNaN(limits.limit) ? guardOfWall(context, slot) : limits.limit;
    finding.verdict = holdUnseenPlate(
      context,
      active,
      judgeBelow(finding.value, finding.limit, limits.deadband, active),
    );
    if (finding.verdict === Verdict.yes) finding.where = placeOf(context.state, context.holder, slot);
  },
};

const guardOfWall = (context: UnitContext, slot: number): number =>
  slot < 0 ? Number.NaN : lowerWallGuardAt(context.site, context.unitIndex, context.state.where[slot] as number);
