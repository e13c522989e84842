import type { GuidedFigure } from '@ebbline/shared/contract/guided-test';
import { needsAccuracy, needsFlow, needsMargin, needsMode, needsPoints, needsValues } from '../common-gates';
import { figureOf } from '../figure-of';
import type { StepRecord } from '../guided-record';
import type { GuidedTestKind, ReadingPlan } from '../guided-test';
import { chosen, has, uOf, valueOf, type GuidedView } from '../guided-view';
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

/** Flow may drift by this share over a minute and counts as held. Own rule. */
const flowDriftShare = 0.03;
/** What one meter may change by within minutes, as a share of its standard uncertainty. Own rule. */
const meterDriftShare = 0.1;

const pumps: Exchange = {
  lead: 'pump.running',
  standby: 'pump.standby.running',
  available: 'pump.available',
  name: 'standby pump',
};
const flow = (allowedDrift: number | null): ReadingPlan => ({
  reading: 'loop.flow',
  title: 'Loop flow',
  quantity: 'volumeFlow',
  read: (view) => valueOf(view, 'loop.flow'),
  allowedDrift,
});
/** Least flow over that before, by one meter: what it is off cancels, what it scatters and how it drifts does not. */
function leastFlow(view: GuidedView, steps: readonly StepRecord[]): GuidedFigure {
  const before = readingOf(steps, 'before', 'loop.flow');
  const mean = before?.mean ?? Number.NaN;
  const least = Math.min(
    ...['exchange', 'after'].map((step) => readingOf(steps, step, 'loop.flow')?.least ?? Number.NaN),
  );
  return figureOf({
    title: 'Least flow, of that before',
    quantity: 'ratio',
    value: least / mean,
    low: 1 - chosen(view, 'drop') / 100,
    high: null,
    scatter: {
      from: 'scatter',
      contribution: ((before?.scatter ?? 0) * least) / mean ** 2,
      degreesOfFreedom: before?.degreesOfFreedom ?? 1,
    },
    others: [{ from: 'loop.flow, drift', contribution: (meterDriftShare * uOf(view, 'loop.flow')) / mean }],
  });
}

/** A standby pump takes over by the site's own procedure: how long it takes, and how far the flow falls meanwhile. */
export const pumpChangeOver: GuidedTestKind = {
  kind: 'pumpChangeOver',
  title: 'Change-over to the standby pump',
  about:
    'Watches a change-over that the site’s own procedure has due: how long it takes until the standby pump moves the water alone, how far the flow falls and how small the margin gets. Common practice: weekly.',
  criterion:
    'Before and after, the drift of the loop’s flow over one minute, its whole interval (95.45 %), lies within 3 % of rated flow. Own rule; common practice, no source.',
  cautions: [
    'While no pump runs the plates lose their water within seconds to a minute: know who takes the load off at once, and keep a hand at the lead.',
    'Behind a pump the unit’s own pipes, filter and exchanger stand above the room’s pressure and can let water out: their tray is dry, and nobody stands at a coupling when pumps change places.',
    'The pump that rests can start by itself, and a check valve that hangs turns it backwards: keep clear of couplings and hot casings.',
  ],
  asks: [
    { key: 'seconds', title: 'Done within', kind: 'number', unit: 's', least: 2, most: 120, usual: 20 },
    { key: 'drop', title: 'Flow may fall by', kind: 'number', unit: '%', least: 1, most: 80, usual: 20 },
  ],
  gates: [
    needsPoints([pumps.lead, pumps.standby, 'loop.flow', margin.reading]),
    needsAccuracy(() => ['loop.flow', margin.reading]),
    needsMode(['running'], 'a change-over of pumps is proved in normal running'),
    needsValues(() => [pumps.lead, pumps.standby, 'loop.flow']),
    needsFlow,
    needsMargin(0),
    isAvailable(pumps),
  ],
  startGates: [standbyRests(pumps)],
  afterBreak:
    'See at the unit that one pump runs and that water flows; where it does not, bring the lead back by hand or take the load off.',
  expectedAlarms: [],
  points: (view) => ['loop.flow', margin.reading].filter((point) => has(view, point)),
  steps: (view) =>
    exchangeSteps(
      pumps,
      {
        watched: ({ plan }, holds) => flow(holds ? flowDriftShare * plan.unit.design.ratedFlowM3PerS : null),
        before: 'The flow as it is now',
        exchange: 'The standby pump takes over',
        exchangeText:
          'Until the standby runs and the lead rests. Where the flow falls away or the standby does not come, bring the lead back by hand.',
        after: 'The flow as the standby moves it',
        mostS: 300,
      },
      view,
    ),
  judge(view, steps) {
    const unseen = notSeen(steps, pumps);
    if (unseen !== null) return { figures: [], notes: [unseen] };
    return {
      figures: [
        secondsFigure(view, steps, 'Seconds until the standby pump alone moved the water'),
        leastFlow(view, steps),
        marginFigure(view, steps),
      ],
      notes: [
        'A flow meter that holds its last value while bubbles pass shows a smaller fall than there was.',
        ...unseenNotes(afterOrder(steps), ['loop.flow', margin.reading]),
      ],
    };
  },
};
