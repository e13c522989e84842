import type { GuidedFigure, GuidedReading } from '@ebbline/shared/contract/guided-test';
import { rectangular } from '@ebbline/shared/uncertainty/combine';
import { figureOf } from '../figure-of';
import type { StepRecord } from '../guided-record';
import type { Gate, MeasurePlan, ReadingPlan, StepPlan } from '../guided-test';
import { chosen, uOf, valueOf, type GuidedView } from '../guided-view';

/** Telemetry of once a second tells the moment of a change to within this, s. */
const tellsWithinS = 1;
const none = { from: 'scatter', contribution: 0, degreesOfFreedom: 1 } as const;

/** Two of a kind that change places: what both change-overs have in common. */
export interface Exchange {
  /** Points that tell which runs. */
  readonly lead: string;
  readonly standby: string;
  /** Point that tells whether the standby could run. */
  readonly available: string;
  /** `standby pump`. */
  readonly name: string;
}

export const margin: ReadingPlan = {
  reading: 'vacuumMarginWorst',
  title: 'Vacuum margin, worst',
  quantity: 'pressureDifference',
  read: (view) => valueOf(view, 'vacuumMarginWorst'),
  allowedDrift: null,
};

const standbyRuns = ({ standby }: Exchange): ReadingPlan => ({
  reading: standby,
  title: 'Standby runs (1) or rests (0)',
  quantity: 'ratio',
  read: (view) => valueOf(view, standby),
  allowedDrift: null,
});

const standbyAlone =
  ({ lead, standby }: Exchange) =>
  (view: GuidedView): boolean =>
    valueOf(view, standby) > 0 && valueOf(view, lead) === 0;

export const isAvailable = ({ available, standby, name }: Exchange): Gate => ({
  code: 'GUIDED_INPUT_BAD',
  shut: (view) =>
    valueOf(view, available) === 0 && !(valueOf(view, standby) > 0) ? `the ${name} is not available` : null,
});

/** At the start alone: what has changed over before can not be seen. */
export const standbyRests = ({ standby, name }: Exchange): Gate => ({
  code: 'GUIDED_STANDBY_RUNS',
  shut: (view) =>
    valueOf(view, standby) > 0
      ? `the ${name} runs already: a change-over to it can not be seen until the lead carries on alone, by your own procedure`
      : null,
});

/** What is watched beside the margin, and in which words. */
interface ExchangeSteps {
  /** With the drift that counts as held; null: it may do as it likes. */
  readonly watched: (view: GuidedView, holds: boolean) => ReadingPlan;
  readonly before: string;
  readonly exchange: string;
  readonly exchangeText: string;
  readonly after: string;
  /** Given up after so long, s. */
  readonly mostS: number;
}

/** How it is held, the order, the change itself, and how it is held then. */
export function exchangeSteps(exchange: Exchange, words: ExchangeSteps, view: GuidedView): readonly StepPlan[] {
  const held = (id: string, title: string, text: string): MeasurePlan => ({
    ...{ kind: 'measure', id, title, text, blockS: 10, windowS: 60, leastS: 60, mostS: 900 },
    readings: [words.watched(view, true), margin],
  });
  return [
    held('before', words.before, 'Nothing is to be done yet.'),
    {
      kind: 'confirm',
      id: 'order',
      title: 'The change-over is due and about to be ordered',
      text: 'When your procedure has it due: confirm here first, then order it at once at the unit’s own controller, which runs the standby up before the lead rests. The seconds count from this confirmation, so the time of the order is in them.',
    },
    {
      ...{ kind: 'measure', id: 'exchange', title: words.exchange, text: words.exchangeText },
      ...{ blockS: 1, windowS: 0, leastS: 0, mostS: words.mostS },
      readings: [words.watched(view, false), margin, standbyRuns(exchange)],
      until: standbyAlone(exchange),
    },
    held('after', words.after, 'Nothing is to be done.'),
  ];
}

export const readingOf = (steps: readonly StepRecord[], step: string, reading: string): GuidedReading | undefined =>
  steps.find(({ id }) => id === step)?.measured?.readings.find((one) => one.reading === reading);

/** Without a second in which the standby rested, nobody saw when it came: why nothing is judged; null where it was seen. */
export const notSeen = (steps: readonly StepRecord[], { standby }: Exchange): string | null =>
  readingOf(steps, 'exchange', standby)?.least === 0
    ? null
    : 'The standby ran already when the count began, so nothing is judged. Confirm before it is ordered.';

/** Seconds from the confirmation, the order with them, against those that were chosen. */
export const secondsFigure = (view: GuidedView, steps: readonly StepRecord[], title: string): GuidedFigure =>
  figureOf({
    title,
    quantity: 'duration',
    value: steps.find(({ id }) => id === 'exchange')?.measured?.seconds ?? Number.NaN,
    low: null,
    high: chosen(view, 'seconds'),
    scatter: none,
    others: [{ from: 'telemetry once a second', contribution: Math.SQRT2 * rectangular(tellsWithinS) }],
  });

/** What counts for how far it went: from the confirmation to the end. */
export const afterOrder = (steps: readonly StepRecord[]): readonly StepRecord[] =>
  steps.filter(({ id }) => id === 'exchange' || id === 'after');

/** The least margin from the confirmation to the end. */
export const marginFigure = (view: GuidedView, steps: readonly StepRecord[]): GuidedFigure =>
  figureOf({
    title: 'Least vacuum margin',
    quantity: 'pressureDifference',
    value: Math.min(
      ...['exchange', 'after'].map((step) => readingOf(steps, step, margin.reading)?.least ?? Number.NaN),
    ),
    low: 0,
    high: null,
    scatter: none,
    others: [{ from: margin.reading, contribution: uOf(view, margin.reading) }],
  });
