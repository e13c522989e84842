import type { GuidedFigure } from '@ebbline/shared/contract/guided-test';
import { needsMargin, needsMode, needsPoints, needsValues } from '../common-gates';
import { figureOf } from '../figure-of';
import type { GuidedTestKind, MeasurePlan, ReadingPlan } from '../guided-test';
import { has, uOf, valueOf, type GuidedView } from '../guided-view';
import { readingOf } from './exchange';
import { expectedAir, inTheLoop, litres, loadOff, permit, reserve, tray, trays } from './opening-gates';

/** Larger openings let water fall past the air that comes in (from about 8.5 mm; Lautrup, Physics of Continuous Matter). */
const mostBoreMm = 5;
/** The least margin, worst of running and stopped, with its uncertainty, Pa. Own rule. */
const leastMarginPa = 5000;
const secondName = ({ settings }: GuidedView): string => String(settings['second'] ?? 'the second person').trim();
const isSecond = (view: GuidedView, operator: string): boolean =>
  secondName(view).toLowerCase() === operator.trim().toLowerCase();

const read = (
  reading: string,
  title: string,
  quantity: ReadingPlan['quantity'],
  allowedDrift: number | null,
): ReadingPlan => ({
  reading,
  title,
  quantity,
  read: (view) => valueOf(view, reading),
  allowedDrift,
});
const watching = (id: string, title: string, text: string, steady: boolean, leastS = 60): MeasurePlan => ({
  kind: 'measure',
  id,
  title,
  text,
  blockS: 10,
  windowS: 60,
  leastS,
  mostS: 900,
  readings: [
    read('separator.pressure', 'Separator', 'absolutePressure', steady ? 1500 : null),
    read('vacuumMarginWorst', 'Vacuum margin, worst', 'pressureDifference', null),
    read('gasLoad', 'Gas load', 'freeAirFlow', null),
  ],
});

/** A small opening to the room, made by people under the site's permit: what comes in, and that the margin holds. */
export const cutLine: GuidedTestKind = {
  kind: 'cutLine',
  title: 'Trial of a small opening',
  about:
    'Watches an opening of at most 5 mm that the site’s own people make at one branch, under the site’s own permit: how much air comes in, how far the pressure goes and that the margin holds. It is offered only while everything that has to stand behind it does, and breaks off the moment one of it does not.',
  criterion:
    'Before and after, the separator’s drift over one minute, its whole interval (95.45 %), lies within 1.5 kPa; while it is open two minutes are watched, and the air is taken from the second: before, the gas still sweeps the return header. Own rule; common practice, no source.',
  cautions: [
    'This lets air into a loop on purpose. Only people whom the site has licensed for it do it, with a valve that shuts at once, never by cutting. Nobody is alone.',
    'Where water shows, where the margin shrinks or the source labours: shut the opening first, then look here.',
    'Above 5 mm water can fall out past the air that comes in, whatever the margin says.',
  ],
  asks: [
    {
      key: 'branch',
      title: 'Branch',
      kind: 'text',
      unit: '',
      least: null,
      most: null,
      usual: null,
    },
    { key: 'bore', title: 'Bore of the opening', kind: 'number', unit: 'mm', least: 0.5, most: mostBoreMm, usual: 2 },
    {
      key: 'second',
      title: 'Second person, at the unit all the while, by the name under which they sign in',
      kind: 'text',
      unit: '',
      least: null,
      most: null,
      usual: null,
    },
    {
      key: 'permit',
      title: 'Number of the site’s work permit',
      kind: 'text',
      unit: '',
      least: null,
      most: null,
      usual: null,
    },
  ],
  choices: ({ plan }) => ({ branch: plan.unit.branches.map(({ id, name }) => ({ value: id, name })) }),
  settingFault(view, operator) {
    const { branch } = view.settings;
    if (view.plan.unit.branches.every(({ id }) => id !== branch)) return `the unit has no branch ${String(branch)}`;
    return isSecond(view, operator) ? 'the second person has to be another than the one who begins the test' : null;
  },
  gates: [
    needsPoints(['separator.pressure', 'vacuumMarginWorst', 'vacuumReserve', 'gasLoad', ...trays]),
    needsMode(['running', 'standby'], 'the vacuum has to be held as usual'),
    needsValues(() => ['separator.pressure', 'gasLoad', ...trays]),
    needsMargin(leastMarginPa),
    reserve,
    loadOff,
    tray,
    inTheLoop,
    permit,
  ],
  graceMs: 0,
  watchedWhileAsked: true,
  afterBreak: 'Where the opening is open: shut the opening first, by the person at it; then see to what is said here.',
  expectedAlarms: [],
  points: (view) =>
    ['separator.pressure', 'vacuumMarginWorst', 'vacuumReserve', 'gasLoad'].filter((point) => has(view, point)),
  steps: (view) => [
    {
      kind: 'confirm',
      id: 'ready',
      title: 'Both people, valve, tray and permit are at the place',
      text: 'The second person stands at the unit and can shut the opening and call. A tray lies under it, live equipment near it is off or covered, the load is off or was seen to stay cool on its fans alone, and the permit hangs there. The valve with its bore is fitted and shut, and the bore was measured.',
    },
    {
      kind: 'confirm',
      id: 'second',
      title: `At the unit: ${secondName(view)}`,
      text: `For ${secondName(view)} alone to confirm, signed in under that name, at a screen of their own or at this one: I stand at the unit, I can shut the opening and call, and I stay until it is shut.`,
      notFor: (now, operator) =>
        isSecond(now, operator) ? null : `this step is for ${secondName(now)} to confirm, signed in under that name`,
    },
    watching('before', 'The loop as it is', 'Nothing is to be opened yet.', true),
    {
      kind: 'confirm',
      id: 'opened',
      title: 'The licensed person is about to open',
      text: 'Everything behind the trial is looked at once more with this confirmation. Confirm first; only then the opening is made, by the site’s own procedure.',
      notFor: (now, operator) =>
        isSecond(now, operator) ? 'the second person watches: somebody else confirms that the opening is made' : null,
    },
    watching(
      'open',
      'Air comes in',
      'Watch for water. Shut the opening at the first doubt, whatever this screen says.',
      false,
      120,
    ),
    {
      kind: 'confirm',
      id: 'closed',
      title: 'The opening is shut again',
      text: 'Confirm once it is shut and dry.',
    },
    watching('after', 'The loop recovers', 'Until the separator is steady. Then close the permit.', true),
  ],
  judge(view, steps) {
    const [before, open] = [readingOf(steps, 'before', 'gasLoad'), readingOf(steps, 'open', 'gasLoad')];
    const margin = readingOf(steps, 'open', 'vacuumMarginWorst');
    if (before === undefined || open === undefined || margin === undefined) return { figures: [], notes: [] };
    const figures: GuidedFigure[] = [
      figureOf({
        title: 'Least vacuum margin in the two minutes of the opening',
        quantity: 'pressureDifference',
        value: margin.least,
        low: 0,
        high: null,
        scatter: { from: 'scatter', contribution: 0, degreesOfFreedom: 1 },
        others: [{ from: 'vacuumMarginWorst', contribution: uOf(view, 'vacuumMarginWorst') }],
      }),
      figureOf({
        title: 'Air that came in',
        quantity: 'freeAirFlow',
        value: open.mean - before.mean,
        low: null,
        high: null,
        scatter: {
          from: 'scatter',
          contribution: Math.hypot(open.scatter, before.scatter),
          degreesOfFreedom: Math.min(open.degreesOfFreedom, before.degreesOfFreedom),
        },
        others: [{ from: 'gasLoad', contribution: uOf(view, 'gasLoad') }],
      }),
    ];
    const said = `By its bore ${litres(expectedAir(view))} free L/min were to be expected (choked flow).`;
    return { figures, notes: [said] };
  },
};
