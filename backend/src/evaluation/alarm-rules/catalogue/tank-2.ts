import { judgeAbove } from '../above';
import { anyOf } from '../any-of';
import { clockDay } from '../details/clock-time';
import { flowText, joined, litresText } from '../details/quantity-text';
import { judgeDiscrete } from '../discrete';
import type { UnitEntry } from '../entry';
import { beyondUsualM3, knowsWaterOfTanks, usualTransferM3 } from '../plant-signs/water-of-tanks';
import { isActive, keep, recall, usable, type UnitContext } from '../judge-context';
import { Verdict } from '../verdict';
import { walksIn, walksWith, walkText } from '../walk-sign';

/**
 * Separator level high, and no air has come in that would have pushed the water there; or water walks into this unit from
 * another one of the loop. `limit`: share of the room above the usual level; of alternating tanks that is the water by which a transfer
 * carries half of what it did. Never off: drain-back after a stop is the case too.
 */
export const tank2: UnitEntry = {
  id: 'TANK-2',
  title: 'Separator level high',
  cause:
    'Water walking over from another unit of the loop, facility water coming in through the exchanger, drain-back after a stop, or too much top-up.',
  consequence: 'Water gets into the vacuum source, and the vacuum is lost.',
  action: {
    a: 'Look at the sum of levels and at the top-up meter before you drain anything. Sum constant: compare the separator pressures of the units. Sum rising without top-up: let another unit take the load, or shed it, and isolate the exchanger.',
    b: 'Look at the sum of levels over a whole tank cycle and at the top-up meter before you drain anything. Sum constant: compare the pressures of the units. Sum rising without top-up: let another unit take the load, or shed it, and isolate the exchanger.',
    c: 'Look at the sum of levels and at the top-up meter before you drain anything. Sum constant: compare the reservoir pressures of the units. Sum rising without top-up: let another unit take the load, or shed it, and isolate the exchanger.',
  },
  confirm: 'Read the level at the sight glass; a gas step in the readings would mean air instead.',
  timeToRespondS: 15 * 60,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: 0.8, deadband: 0.1, onDelayMs: 30_000, offDelayMs: 60_000 },
  unitOfMeasure: '1',
  basis: 'Own rule: four fifths of the room that the vacuum source’s inlet leaves above the usual level.',
  feeds: [
    'tank.<id>.level',
    'tank.<id>.filling',
    'separator.level',
    'separator.levelHigh',
    'supplyTank.level',
    'topUp.volume',
  ],
  offInModes: [],
  offWhenInferred: false,
  applies: (unit, slots) =>
    slots.separatorLevel >= 0 || slots.separatorLevelHigh >= 0 || knowsWaterOfTanks(unit, slots),
  judge(context, limits, active, finding) {
    finding.value = roomTaken(context);
    finding.limit = limits.limit;
    // Air pushes water out of the pipes: the level falls back by itself when the branch is isolated.
    // The switch before the vacuum source's inlet is heard all the same.
    const byLevel = !levelTells(context)
      ? Verdict.no
      : isActive(context, 'AIR-1')
        ? Verdict.hold
        : judgeAbove(finding.value, limits.limit, limits.deadband, active);
    const bySwitch = judgeDiscrete(usable(context.state, context.slots.separatorLevelHigh));
    const level = context.slots.separatorLevelHigh < 0 ? byLevel : anyOf(bySwitch, byLevel);
    if (level !== Verdict.yes && isActive(context, 'AIR-1')) return;
    finding.verdict = anyOf(judgeWalk(context, active), level);
  },
  detail(context) {
    const other = walksWith(context);
    if (other >= 0) return walkText(context, other);
    const { nowMs, site, slots, state } = context;
    const sum = usable(state, slots.loopWaterRate);
    const topUp = usable(state, slots.topUpRate);
    const full = usable(state, slots.timeToFull);
    const beyond = knowsWaterOfTanks(context.unit, slots) ? beyondUsualM3(context) : Number.NaN;
    return joined(
      beyond > 0 ? `The tanks hold ${litresText(beyond)} more than usual.` : null,
      sum > risingM3PerS && topUp < sum / 2
        ? `The sum of levels rises by ${flowText(sum)} with no top-up to match: facility water may be coming in.`
        : null,
      Number.isNaN(full) ? null : `Full at ${clockDay(nowMs + full * 1000, nowMs, site.timeZone)}.`,
    );
  },
};

/** A rise of the sum that is worth naming, m³/s: 0.5 L/min. Own rule. */
const risingM3PerS = 0.5 / 60_000;

/** A level without area and room in the site file says nothing of how full the separator is: then only the switch does. */
const levelTells = ({ slots, unit }: UnitContext): boolean =>
  knowsWaterOfTanks(unit, slots) ||
  (slots.separatorLevel >= 0 &&
    unit.design.separatorAreaM2 !== null &&
    unit.design.volumes.separatorRoomM3 !== null &&
    unit.design.volumes.separatorUsualLevelM !== null);

/** When water was last seen to walk in, ms; `never` once it was seen that none does. */
const cell = { walkedMs: 0 } as const;
const never = 0;
/** A sensor that is lost reads on as it stood, until it is stale: for so long that is no end of a walk. Own rule. */
const lostMs = 60_000;

/** A walk that is not known now goes on as it was last seen; what stood before a restart may have been one. */
function judgeWalk(context: UnitContext, active: boolean): Verdict {
  const { nowMs } = context;
  const walks = walksIn(context);
  const walkedMs = recall(context, cell.walkedMs);
  const walked = nowMs - walkedMs < lostMs;
  if (walks === true || (walks === null && walked)) keep(context, cell.walkedMs, nowMs);
  else if (walks === false && Number.isNaN(walkedMs)) keep(context, cell.walkedMs, never);
  if (walks !== null) return walks ? Verdict.yes : Verdict.no;
  return walked || (active && Number.isNaN(walkedMs)) ? Verdict.hold : Verdict.no;
}

/** Share of the room above the usual level that is taken; NaN where level or volumes are not known. */
function roomTaken(context: UnitContext): number {
  const { slots, state, unit } = context;
  if (knowsWaterOfTanks(unit, slots)) return beyondUsualM3(context) / (usualTransferM3(context) / 2);
  const { separatorAreaM2, volumes } = unit.design;
  const { separatorRoomM3, separatorUsualLevelM } = volumes;
  if (separatorAreaM2 === null || separatorRoomM3 === null || separatorUsualLevelM === null) return Number.NaN;
  return ((usable(state, slots.separatorLevel) - separatorUsualLevelM) * separatorAreaM2) / separatorRoomM3;
}
