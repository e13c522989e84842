import type { CompiledUnit } from '../../site/compiled-site';
import type { SlotState } from '../../slots/slot-state';
import { anyOf } from '../any-of';
import { joined } from '../details/quantity-text';
import { judgeDiscrete } from '../discrete';
import type { UnitEntry } from '../entry';
import { usable } from '../judge-context';
import { hasPlace, placesToTell, withPlace } from '../told-places';
import { Verdict } from '../verdict';

const caution = 'Keep clear of water near live equipment; local electrical rules and the site’s procedure come first.';
/** Unit M without facility water: the supply gains 11 K in two minutes, most of it in the first (computed, no published source). */
const heat = 'Its supply is hot within half a minute of that: let another unit take its load, or shed it.';
const reset = 'When the place is dry and the alarm acknowledged, acknowledge once more to reset it.';

/** Water found: a rope or tray is wet. Latches. Never suppressed by mode. */
export const water1: UnitEntry = {
  id: 'WATER-1',
  title: 'Water found',
  cause:
    'Facility pipe, the unit’s own part above ambient pressure, condensation, the roof, or an isolated branch; the loop itself only where its vacuum margin is zero or less.',
  consequence: 'Water reaches live equipment.',
  action: {
    a: `Keep the vacuum source running, shut the facility water to this unit, and look. ${heat} Two signs before a row is stopped. ${caution} ${reset}`,
    b: `Keep the vacuum source and the tank change-over running, shut the facility water to this unit, and look. ${heat} Two signs before a row is stopped. ${caution} ${reset}`,
    c: `Keep the vacuum source running, shut the facility water to this unit, and look. ${heat} Two signs before a row is stopped. ${caution} ${reset}`,
  },
  confirm:
    'Look at the rope or tray and follow the water up; compare the vacuum margin, the sum of levels and the top-up.',
  timeToRespondS: 60,
  severity: 'severe',
  worse: null,
  latching: true,
  defaults: { limit: 1, deadband: 0, onDelayMs: 1000, offDelayMs: 5000 },
  unitOfMeasure: '1',
  // Two looks in a row, so that one odd reading calls nobody; within two seconds of the first reading that is wet.
  basis: 'Discrete; water near live equipment is dangerous in itself.',
  feeds: ['water.found', 'tray.water.found', 'branch.<id>.water.found'],
  offInModes: [],
  offWhenInferred: false,
  judge(context, limits, active, finding) {
    const { slots, state } = context;
    finding.limit = 1;
    const ofUnit = judged(state, slots.waterFound);
    const ofTray = judged(state, slots.trayWaterFound);
    let verdict = anyOf(ofUnit, ofTray);
    let wet = 0;
    if (ofUnit === Verdict.yes) wet = withPlace(wet, place.unit);
    if (ofTray === Verdict.yes) wet = withPlace(wet, place.tray);
    for (let branch = 0; branch < slots.branchWaterFound.length; branch += 1) {
      const found = judged(state, slots.branchWaterFound[branch] as number);
      if (found === Verdict.yes) wet = withPlace(wet, place.firstBranch + branch);
      verdict = anyOf(verdict, found);
    }
    finding.value = verdict === Verdict.hold ? Number.NaN : Number(verdict === Verdict.yes);
    finding.verdict = verdict;
    const news = placesToTell(context, cell, wet, limits.onDelayMs, active);
    finding.again = news !== 0;
    finding.where = nameOf(context.unit, news) ?? nameOf(context.unit, wet);
  },
  detail: ({ slots, state, unit }) =>
    joined(
      usable(state, slots.trayWaterFound) >= 0.5
        ? 'In the unit’s own tray: its pump discharge, filter and exchanger stand above ambient and leak outward.'
        : null,
      wetBranches(state, unit),
      besides(usable(state, slots.waterFound), usable(state, slots.trayWaterFound), wetBranches(state, unit)),
    ),
};

const cell = { told: 0, newSinceMs: 1 } as const;
const place = { unit: 0, tray: 1, firstBranch: 2 } as const;

/** A rack says most of where to look, the unit itself the least. */
function nameOf({ branches }: CompiledUnit, places: number): string | null {
  if (places === 0) return null;
  for (let branch = branches.length - 1; branch >= 0; branch -= 1)
    if (hasPlace(places, place.firstBranch + branch)) return branches[branch]?.name ?? null;
  return hasPlace(places, place.tray) ? 'Drip tray of the unit' : null;
}

/** A place without a sensor says that there is nothing; else one missing rope would hold all the others. */
const judged = (state: SlotState, slot: number): Verdict =>
  slot < 0 ? Verdict.no : judgeDiscrete(usable(state, slot));

/** By itself the report of the unit adds nothing to the title. */
const besides = (ofUnit: number, ofTray: number, atBranches: string | null): string | null =>
  ofUnit >= 0.5 && (ofTray >= 0.5 || atBranches !== null) ? 'The unit reports water too, without saying where.' : null;

function wetBranches(state: SlotState, { branches }: CompiledUnit): string | null {
  const wet = branches.filter(({ slot }) => usable(state, slot.waterFound) >= 0.5);
  const shut = wet.filter(({ slot }) => usable(state, slot.isolated) >= 0.5);
  if (wet.length === 0) return null;
  const where = `At ${wet.map(({ name }) => name).join(', ')}.`;
  return shut.length === 0
    ? where
    : `${where} ${shut.map(({ name }) => name).join(', ')} is isolated and not protected by the loop’s margin: power off its servers, then relieve it to the loop.`;
}
