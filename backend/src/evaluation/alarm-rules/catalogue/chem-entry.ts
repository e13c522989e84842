import { judgeBand } from '../band';
import { everyShape, type Limits, type UnitEntry } from '../entry';
import { usable } from '../judge-context';
import type { UnitSlots } from '../unit-slots';
import type { UnitEntryId } from '../entry-ids';

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
  readonly slot: (slots: UnitSlots) => number;
}

const caution =
  'Biocides and inhibitors harm people: keep to their safety data sheets and the water treater’s instructions, and never mix them.';

/** Slow values, or hand-drawn samples: they have to stay outside so long. */
const delays = { onDelayMs: 600_000, offDelayMs: 600_000 } as const;

/** One water parameter outside the site’s band: an engineer takes a sample and corrects. */
export const chemistryEntry = (text: ChemistryText): UnitEntry => ({
  id: text.id,
  title: text.title,
  cause: text.cause,
  consequence: text.consequence,
  action: everyShape(`${text.action} ${caution}`),
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
  applies: (_unit, slots) => text.slot(slots) >= 0,
  judge(context, limits, active, finding) {
    finding.value = usable(context.state, text.slot(context.slots));
    finding.limit = nearerEnd(finding.value, limits);
    finding.verdict = judgeBand(finding.value, limits.low ?? Number.NaN, limits.limit, limits.deadband, active);
  },
});

/** The end of the band that the value has passed, or is nearer to. */
export function nearerEnd(value: number, { limit, low = Number.NaN }: Limits): number {
  if (Number.isNaN(low)) return limit;
  return Number.isNaN(limit) || value < (low + limit) / 2 ? low : limit;
}
