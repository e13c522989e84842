import { needsAccuracy, needsMargin, needsMode, needsPoints, needsValues } from '../common-gates';
import { figureOf } from '../figure-of';
import type { GuidedTestKind, ReadingPlan } from '../guided-test';
import { chosen, has, uOf, valueOf } from '../guided-view';
import { unseenNotes } from '../unseen-notes';
import {
  afterOrder,
  exchangeSteps,
  isAvailable,
  margin,
  marginFigure,
  notSeen,
  readingOf,
  secondsFigure,
  standbyRests,
  type Exchange,
} from './exchange';

/** The separator may drift by so much over a minute and counts as held, Pa: a start/stop source swings between its edges. Own rule. */
const heldWithinPa = 1500;

const sources: Exchange = {
  lead: 'vacuum.running',
  standby: 'vacuum.standby.running',
  available: 'vacuum.available',
  name: 'standby vacuum source',
};
const separator = (allowedDrift: number | null): ReadingPlan => ({
  reading: 'separator.pressure',
  title: 'Separator',
  quantity: 'absolutePressure',
  read: (view) => valueOf(view, 'separator.pressure'),
  allowedDrift,
});
/** A standby vacuum source takes over by the site's own procedure: how long it takes, and how far the pressure goes meanwhile. */
export const changeOver: GuidedTestKind = {
  kind: 'changeOver',
  title: 'Change-over to the standby vacuum source',
  about:
    'Watches a change-over that the site’s own procedure has due: how long it takes until the standby carries the vacuum alone, how far the separator’s pressure rises and how small the margin gets. Common practice: weekly.',
  criterion:
    'Before and after, the separator’s drift over one minute, its whole interval (95.45 %), lies within 1.5 kPa. Own rule; common practice, no source.',
  cautions: [
    'Two sources change places: keep clear of couplings, belts and hot casings; the one that rests can start by itself.',
    'Know before how the lead is brought back by hand, and have somebody at the unit who can.',
  ],
  asks: [
    { key: 'seconds', title: 'Done within', kind: 'number', unit: 's', least: 2, most: 600, usual: 30 },
    { key: 'rise', title: 'Separator may rise by', kind: 'number', unit: 'kPa', least: 0.5, most: 30, usual: 4 },
  ],
  gates: [
    needsPoints(['vacuum.running', 'vacuum.standby.running', 'separator.pressure', 'vacuumMarginWorst']),
    needsAccuracy(() => ['separator.pressure', 'vacuumMarginWorst']),
    needsMode(['running', 'standby'], 'a change-over is proved where the vacuum is held as usual'),
    needsValues(() => ['vacuum.running', 'vacuum.standby.running', 'separator.pressure']),
    needsMargin(0),
    isAvailable(sources),
  ],
  startGates: [standbyRests(sources)],
  afterBreak:
    'See at the unit that one vacuum source runs and that the margin holds; where it does not, bring the lead back by hand.',
  expectedAlarms: [],
  points: (view) => ['separator.pressure', 'vacuumMarginWorst'].filter((point) => has(view, point)),
  steps: (view) =>
    exchangeSteps(
      sources,
      {
        watched: (_, holds) => separator(holds ? heldWithinPa : null),
        before: 'The vacuum as it is held now',
        exchange: 'The standby takes over',
        exchangeText:
          'Until the standby runs and the lead rests. Where the margin shrinks or the standby does not come, bring the lead back by hand.',
        after: 'The vacuum as the standby holds it',
        mostS: 600,
      },
      view,
    ),
  judge(view, steps) {
    const unseen = notSeen(steps, sources);
    if (unseen !== null) return { figures: [], notes: [unseen] };
    const before = readingOf(steps, 'before', 'separator.pressure');
    const peaks = ['exchange', 'after'].map((step) => readingOf(steps, step, 'separator.pressure')?.most ?? Number.NaN);
    const rise = figureOf({
      title: 'Rise of the separator’s pressure',
      quantity: 'pressureDifference',
      value: Math.max(...peaks) - (before?.mean ?? Number.NaN),
      low: null,
      high: 1000 * chosen(view, 'rise'),
      // One sensor before and after: what it is off cancels, what it scatters does not.
      scatter: {
        from: 'scatter',
        contribution: before?.scatter ?? 0,
        degreesOfFreedom: before?.degreesOfFreedom ?? 1,
      },
      others: [{ from: 'separator.pressure, drift', contribution: 0.1 * uOf(view, 'separator.pressure') }],
    });
    const seconds = secondsFigure(view, steps, 'Seconds until the standby alone held the vacuum');
    return {
      figures: [seconds, rise, marginFigure(view, steps)],
      notes: unseenNotes(afterOrder(steps), ['separator.pressure', margin.reading]),
    };
  },
};
