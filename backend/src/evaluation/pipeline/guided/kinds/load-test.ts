import type { GuidedReading } from '@ebbline/shared/contract/guided-test';
import { usable } from '../../../alarm-rules/judge-context';
import { standardUncertainty } from '../../../derive/standard-uncertainty';
import { needsFlow, needsMargin, needsMode, needsValues } from '../common-gates';
import { figureOf } from '../figure-of';
import type { Gate, GuidedTestKind, ReadingPlan } from '../guided-test';
import { chosen, uOf, valueOf, type GuidedView } from '../guided-view';
import { unseenNotes } from '../unseen-notes';

/** Over the window the hottest plate may drift by so much, K, and the heat by this share, and it counts as settled. Own rule. */
const plateDriftK = 1;
const heatDriftShare = 0.05;
const windowS = 600;

const plateSlots = ({ plan }: GuidedView): readonly number[] =>
  plan.unit.plates.map(({ slot }) => slot.temperature).filter((slot) => slot >= 0);

/** The hottest plate, °C; NaN where one is bad, as it might be that one. */
const hottest = (view: GuidedView): number =>
  Math.max(...plateSlots(view).map((slot) => usable(view.pipeline.state, slot)));

/** So many plates are told one by one; the hottest of all is judged in any case. Own rule. */
const mostTold = 64;

const measuredPlates = ({ plan }: GuidedView) => plan.unit.plates.filter(({ slot }) => slot.temperature >= 0);

/** Each plate beside the hottest of them. */
const eachPlate = (view: GuidedView): readonly ReadingPlan[] =>
  measuredPlates(view)
    .slice(0, mostTold)
    .map(({ id, name, slot }) => ({
      reading: `plate.${id}`,
      title: name,
      quantity: 'temperature',
      read: (now) => usable(now.pipeline.state, slot.temperature),
      allowedDrift: null,
    }));

/** Which plate was hottest at its peak and once settled, and whether all of them are told. */
function notesOf(view: GuidedView, readings: readonly GuidedReading[]): string[] {
  const plates = readings.filter(({ reading }) => reading.startsWith('plate.'));
  const hottestBy = (of: (one: GuidedReading) => number): string => {
    const highest = Math.max(...plates.map(of));
    return `${plates.find((one) => of(one) === highest)?.title ?? ''} at ${highest.toFixed(1)} °C`;
  };
  const count = measuredPlates(view).length;
  return [
    `Hottest at its peak: ${hottestBy(({ most }) => most)}; once settled: ${hottestBy(({ mean }) => mean)}.`,
    ...(count > mostTold
      ? [`The record tells ${mostTold} of ${count} plates; the hottest is that of all of them.`]
      : []),
  ];
}

const plateU = (view: GuidedView): number =>
  Math.max(...plateSlots(view).map((slot) => standardUncertainty(view.pipeline.site.slots, view.pipeline.state, slot)));

const gates: readonly Gate[] = [
  {
    code: 'GUIDED_NO_POINT',
    shut: (view) => (plateSlots(view).length > 0 ? null : 'no plate of this unit has a temperature'),
  },
  {
    code: 'GUIDED_NO_POINT',
    shut: ({ plan }) =>
      (plan.unit.design.ratedHeatW ?? 0) > 0 ? null : 'the site file states no rated heat to load the unit against',
  },
  {
    code: 'GUIDED_NO_ACCURACY',
    shut: (view) => (Number.isNaN(plateU(view)) ? 'the site file states no accuracy of a plate’s temperature' : null),
  },
  needsMode(['running'], 'a load test is run in normal running'),
  needsFlow,
  needsValues(() => ['heatRemoved', 'supply.temperature', 'vacuumMarginWorst']),
  needsMargin(0),
  {
    code: 'GUIDED_INPUT_BAD',
    shut: (view) =>
      Number.isNaN(hottest(view)) ? 'a plate’s temperature is bad or stale, and it might be the hottest' : null,
  },
  {
    code: 'GUIDED_LOAD',
    shut(view) {
      const least = (chosen(view, 'load') / 100) * (view.plan.unit.design.ratedHeatW ?? Number.NaN);
      const heat = valueOf(view, 'heatRemoved');
      if (!(heat < least)) return null;
      return `heat removed ${(heat / 1000).toFixed(1)} kW is below the ${(least / 1000).toFixed(1)} kW of the test; bring the load up first`;
    },
  },
];

/** Under load for so long: how hot the plates got, and where they settled. */
export const loadTest: GuidedTestKind = {
  kind: 'loadTest',
  title: 'Load test',
  about:
    'Holds a load of a new or repaired unit and tells how hot its hottest plate got, where it settled, and how small the vacuum margin became. Common practice at acceptance: at rated heat, for hours.',
  criterion:
    'After the holding time, over ten minutes, the drift of the hottest plate, its whole interval (95.45 %), lies within 1 K, that of the heat within 5 %. Own rule; common practice, no source.',
  cautions: [
    'Chips throttle or trip when they get too hot: know who takes the load off, and do it by hand where a plate nears its limit. This program switches nothing.',
    'Bare heaters burn and set fire without flow: their own hard-wired trip has to be proved before.',
  ],
  asks: [
    { key: 'minutes', title: 'Hold for', kind: 'number', unit: 'min', least: 10, most: 4320, usual: 60 },
    {
      key: 'load',
      title: 'At least this load, of rated heat',
      kind: 'number',
      unit: '%',
      least: 10,
      most: 120,
      usual: 80,
    },
    { key: 'plate', title: 'No plate above', kind: 'number', unit: '°C', least: 30, most: 120, usual: 80 },
  ],
  gates,
  afterBreak: 'The load may still be on: see that the plates are cooled, or take it off.',
  expectedAlarms: [],
  points: (view) => [
    'supply.temperature',
    'heatRemoved',
    ...view.plan.unit.plates.filter(({ slot }) => slot.temperature >= 0).map(({ id }) => `plate.${id}.temperature`),
  ],
  steps: (view) => [
    {
      kind: 'confirm',
      id: 'loaded',
      title: 'The load is on, and somebody can take it off',
      text: 'A person who can take the load off is reached at once until the end. The load was brought up by your own plan.',
    },
    {
      kind: 'measure',
      id: 'load',
      title: 'Under load',
      text: 'Hold the load. What breaks the test off says so; look at the plant then, not at the test.',
      blockS: 60,
      windowS,
      leastS: Math.max(windowS, 60 * (Number.isNaN(chosen(view, 'minutes')) ? 60 : chosen(view, 'minutes'))),
      mostS: 3600 + 60 * (Number.isNaN(chosen(view, 'minutes')) ? 60 : chosen(view, 'minutes')),
      readings: [
        {
          reading: 'plates',
          title: 'Hottest plate',
          quantity: 'temperature',
          read: hottest,
          allowedDrift: plateDriftK,
        },
        ...eachPlate(view),
        {
          reading: 'heatRemoved',
          title: 'Heat removed',
          quantity: 'power',
          read: (now) => valueOf(now, 'heatRemoved'),
          allowedDrift: heatDriftShare * Math.abs(valueOf(view, 'heatRemoved')),
        },
        {
          reading: 'vacuumMarginWorst',
          title: 'Vacuum margin, worst',
          quantity: 'pressureDifference',
          read: (now) => valueOf(now, 'vacuumMarginWorst'),
          allowedDrift: null,
        },
      ],
    },
  ],
  judge(view, steps) {
    const readings = steps.flatMap(({ measured }) => measured?.readings ?? []);
    const find = (name: string): GuidedReading | undefined => readings.find(({ reading }) => reading === name);
    const [plates, heat, margin] = [find('plates'), find('heatRemoved'), find('vacuumMarginWorst')];
    if (plates === undefined || heat === undefined || margin === undefined) return { figures: [], notes: [] };
    const none = { from: 'scatter', contribution: 0, degreesOfFreedom: 1 };
    const scatter = (of: GuidedReading) => ({
      from: 'scatter',
      contribution: of.scatter,
      degreesOfFreedom: of.degreesOfFreedom,
    });
    const sensor = { from: 'plate temperature', contribution: plateU(view) };
    const limit = { low: null, high: chosen(view, 'plate') };
    return {
      figures: [
        figureOf({
          title: 'Peak of the hottest plate',
          quantity: 'temperature',
          value: plates.most,
          ...limit,
          scatter: none,
          others: [sensor],
        }),
        figureOf({
          title: 'The hottest plate, settled',
          quantity: 'temperature',
          value: plates.mean,
          ...limit,
          scatter: scatter(plates),
          others: [sensor],
        }),
        figureOf({
          title: 'Least vacuum margin',
          quantity: 'pressureDifference',
          value: margin.least,
          low: 0,
          high: null,
          scatter: none,
          others: [{ from: 'vacuumMarginWorst', contribution: uOf(view, 'vacuumMarginWorst') }],
        }),
        figureOf({
          title: 'Heat removed, settled',
          quantity: 'power',
          value: heat.mean,
          low: null,
          high: null,
          scatter: scatter(heat),
          others: [{ from: 'heatRemoved', contribution: uOf(view, 'heatRemoved') }],
        }),
      ],
      notes: [...notesOf(view, readings), ...unseenNotes(steps, ['plates', 'vacuumMarginWorst'])],
    };
  },
};
