import { anyOf } from '../any-of';
import { judgeBelow } from '../below';
import { Verdict } from '../verdict';
import { flowText, joined } from '../details/quantity-text';
import type { Limits, UnitEntry } from '../entry';
import type { Finding } from '../finding';
import { beyondUsualM3, knowsWaterOfTanks, usualTransferM3 } from '../plant-signs/water-of-tanks';
import { keep, recall, usable, type UnitContext } from '../judge-context';
import { runningMean } from '../running-mean';
import type { CompiledUnit } from '../../site/compiled-site';
import type { UnitSlots } from '../unit-slots';
import { walksWith, walkText } from '../walk-sign';

/** Below this share of the limit the pump is about to starve, whatever the cause. */
const nearlyEmpty = 0.5;
/** A fall of the sum that is a loss and not noise, m³/s: 0.3 L/min, as a mean of minutes: water sloshes. Own rule. */
const losingM3PerS = -0.3 / 60_000;
const losingMs = 5 * 60_000;
/** Cell of the rule that keeps that mean; its time is in the next one. */
const sumRate = 0;

/**
 * A level is low: the supply tank's or the separator's. `limit`: share of the usual level; of alternating tanks, of the water that
 * a transfer usually carries. An alert while nothing more shows; an
 * alarm where the loop loses water or the tank is nearly empty.
 */
export const tank3: UnitEntry = {
  id: 'TANK-3',
  title: 'Water level low',
  cause: 'Water carried out with the exhaust, walked over to another unit, shrunk by cold, drained, or leaked out.',
  consequence: 'The pump starves, and the flow is lost.',
  action: {
    a: 'Check the other unit of the loop first: water that has walked there comes back. Else top up with treated water.',
    b: 'Check the other unit of the loop first, over a whole tank cycle: water that has walked there comes back. Else top up with treated water.',
    c: 'Check the other unit of the loop first: water that has walked there comes back. Else top up the reservoir with treated water.',
  },
  confirm: 'Read the level at the sight glass; compare the top-up of the week with what the exhaust carries out.',
  timeToRespondS: 30 * 60,
  severity: 'minor',
  worse: { severity: 'major', timeToRespondS: 30 * 60, when: 'the loop loses water, or a tank is nearly empty' },
  latching: false,
  defaults: { limit: 0.6, deadband: 0.05, onDelayMs: 60_000, offDelayMs: 60_000 },
  unitOfMeasure: '1',
  basis: 'Common practice, no source: low at a good half of the usual level.',
  feeds: ['tank.<id>.level', 'tank.<id>.filling', 'separator.level', 'supplyTank.level'],
  offInModes: ['off', 'vented', 'tightnessTest', 'filling', 'draining'],
  offWhenInferred: false,
  applies: (unit, slots) => knowsWaterOfTanks(unit, slots) || knowsLevel(unit, slots),
  judge(context, limits, active, finding) {
    const { slots, state, unit } = context;
    followSum(context);
    if (knowsWaterOfTanks(unit, slots)) {
      judgeTanks(context, limits, active, finding);
      return;
    }
    const { separatorUsualLevelM, supplyTankUsualLevelM } = unit.design.volumes;
    const separator = usable(state, slots.separatorLevel) / (separatorUsualLevelM ?? Number.NaN);
    const supply = usable(state, slots.supplyTankLevel) / (supplyTankUsualLevelM ?? Number.NaN);
    const lower = !(separator >= supply);
    finding.value = lower && !Number.isNaN(separator) ? separator : supply;
    finding.where = lower && !Number.isNaN(separator) ? 'Separator' : 'Supply tank';
    finding.limit = limits.limit;
    // Each tank by itself: a tank whose sensor is bad clears nothing, however well the other one stands.
    const ofTank = (share: number, slot: number, usualM: number | null): Verdict =>
      slot < 0 || usualM === null ? Verdict.no : judgeBelow(share, limits.limit, limits.deadband, active);
    finding.verdict = anyOf(
      ofTank(separator, slots.separatorLevel, separatorUsualLevelM),
      ofTank(supply, slots.supplyTankLevel, supplyTankUsualLevelM),
    );
    finding.worse = finding.value < nearlyEmpty * limits.limit || losesWater(context);
  },
  detail(context) {
    const other = walksWith(context);
    if (other >= 0) return `${walkText(context, other)} Do not top up.`;
    return joined(
      losesWater(context)
        ? `The sum of levels falls by ${flowText(-recall(context, sumRate))}: the loop loses water.`
        : null,
    );
  },
};

const knowsLevel = ({ design: { volumes } }: CompiledUnit, slots: UnitSlots): boolean =>
  (slots.separatorLevel >= 0 && volumes.separatorUsualLevelM !== null) ||
  (slots.supplyTankLevel >= 0 && volumes.supplyTankUsualLevelM !== null);

/** Both of alternating tanks together: each runs empty and full by turns. */
function judgeTanks(context: UnitContext, limits: Limits, active: boolean, finding: Finding): void {
  finding.value = 1 + beyondUsualM3(context) / usualTransferM3(context);
  finding.where = 'Tanks';
  finding.limit = limits.limit;
  finding.verdict = judgeBelow(finding.value, limits.limit, limits.deadband, active);
  finding.worse = finding.value < nearlyEmpty * limits.limit || losesWater(context);
}

/** Water stands until minutes have shown that it does not; a time without a known sum shows nothing. */
function followSum(context: UnitContext): void {
  const rate = usable(context.state, context.slots.loopWaterRate);
  if (Number.isNaN(recall(context, sumRate))) keep(context, sumRate, 0);
  if (Number.isNaN(rate) || Number.isNaN(recall(context, sumRate + 1))) keep(context, sumRate + 1, context.nowMs);
  runningMean(context, sumRate, rate, losingMs);
}

const losesWater = (context: UnitContext): boolean => recall(context, sumRate) < losingM3PerS && walksWith(context) < 0;
