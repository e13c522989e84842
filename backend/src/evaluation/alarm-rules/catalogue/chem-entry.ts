import { waterParameters, type WaterParameterId } from '@ebbline/shared/contract/water-parameters';
import { judgeBand } from '../band';
import { everyShape, type Limits, type UnitEntry } from '../entry';
import type { UnitEntryId } from '../entry-ids';
import type { CompiledUnit } from '../../site/compiled-site';
import type { CompiledWaterParameter } from '../../site/compiled-water';
import type { Finding } from '../finding';
import { Verdict } from '../verdict';
import { anyOf } from '../any-of';
import type { SlotState } from '../../slots/slot-state';
import { waterDetail } from '../water-detail';
import { isUnheard, waterParameterOf, waterValue } from '../water-in-force';

/** What one entry of the water's quality says; the rest is the same for all of them. */
export interface ChemistryText {
  readonly id: UnitEntryId;
  readonly title: string;
  readonly cause: string;
  readonly consequence: string;
  readonly action: string;
  readonly confirm: string;
  readonly basis: string;
  readonly unitOfMeasure: string;
  /** `low` and `limit` are the two ends of the band; NaN: that side has no default, the site gives it. */
  readonly low: number;
  readonly limit: number;
  readonly deadband: number;
  readonly feeds: readonly string[];
  readonly parameter: WaterParameterId;
}

/** Stands behind what to do wherever somebody handles treated water. */
export const chemistryCaution =
  'Biocides and inhibitors harm people: keep to their safety data sheets and the water treater’s instructions, and never mix them.';

/** Slow values, or hand-drawn samples: they have to stay outside so long. */
const delays = { onDelayMs: 600_000, offDelayMs: 600_000 } as const;

/** One water parameter outside the site’s band: an engineer takes a sample and corrects. */
export const chemistryEntry = (text: ChemistryText): UnitEntry => ({
  id: text.id,
  title: text.title,
  cause: text.cause,
  consequence: text.consequence,
  action: everyShape(`${text.action} ${chemistryCaution}`),
  confirm: text.confirm,
  timeToRespondS: 86_400,
  severity: 'minor',
  worse: null,
  latching: false,
  defaults: { limit: text.limit, low: text.low, deadband: text.deadband, ...delays },
  unitOfMeasure: text.unitOfMeasure,
  basis: text.basis,
  feeds: text.feeds,
  offInModes: [],
  offWhenInferred: false,
  applies: (unit) => waterParameterOf(unit, text.parameter) !== null,
  judge(context, limits, active, finding) {
    finding.value = waterValue(context.state, context.unit, text.parameter);
    finding.limit = nearerEnd(finding.value, limits);
    finding.verdict = judgeBand(finding.value, limits.low ?? Number.NaN, limits.limit, limits.deadband, active);
  },
  detail: (context) => waterDetail(context, [text.parameter]),
});

/** The end of the band that the value has passed, or is nearer to. */
export function nearerEnd(value: number, { limit, low = Number.NaN }: Limits): number {
  if (Number.isNaN(low)) return limit;
  return Number.isNaN(limit) || value < (low + limit) / 2 ? low : limit;
}

/** What was found of one parameter. */
export interface ParameterFinding {
  readonly verdict: Verdict;
  readonly value: number;
  readonly limit: number;
}

/** Several parameters under one entry: any of them raises it, and the first outside its band is shown. */
export function judgeParameters(
  state: SlotState,
  unit: CompiledUnit,
  ids: readonly WaterParameterId[],
  active: boolean,
  finding: Finding,
  judge: (parameter: CompiledWaterParameter) => ParameterFinding,
): void {
  let verdict: Verdict = Verdict.no;
  let shown: ParameterFinding | null = null;
  for (const id of ids) {
    const parameter = waterParameterOf(unit, id);
    if (parameter === null) continue;
    if (isUnheard(state, parameter)) {
      // What nobody has typed yet says nothing; a sensor that was not heard since the start does not end what stood before it.
      if (active && parameter.sensorSlot >= 0) verdict = anyOf(verdict, Verdict.hold);
      continue;
    }
    const one = judge(parameter);
    if (shown === null || (one.verdict === Verdict.yes && shown.verdict !== Verdict.yes)) {
      shown = one;
      finding.where = id;
      finding.unitOfMeasure = waterParameters[id].unit;
    }
    verdict = anyOf(verdict, one.verdict);
  }
  finding.verdict = verdict;
  finding.value = shown?.value ?? Number.NaN;
  finding.limit = shown?.limit ?? Number.NaN;
}
