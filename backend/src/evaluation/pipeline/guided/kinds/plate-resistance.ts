import type { GuidedAsked } from '@ebbline/shared/contract/guided-test';
import { needsAccuracy, needsFlow, needsMargin, needsMode, needsPoints } from '../common-gates';
import type { GuidedTestKind, StepPlan } from '../guided-test';
import { has, valueOf, type GuidedView } from '../guided-view';
import { drawnCurve, plateCurve } from './plate-curve';
import { plateFigure, plateFigureByCurve, plateNotes } from './plate-figures';
import { caseOf, platePoints } from './plate-points';

/** Case and supply may drift by so much over the window, K. Own rule. */
const driftK = 0.3;
const windowS = 180;

const pointsOf = ({ settings }: GuidedView): number =>
  typeof settings['points'] === 'number' ? settings['points'] : 3;

const number = (key: string, title: string, unit: string, least: number, most: number): GuidedAsked => ({
  key,
  title,
  kind: 'number',
  unit,
  least,
  most,
  usual: null,
});
/** Read off the instruments of the bench, each with ± what it may be off. */
const readOff: readonly GuidedAsked[] = [
  number('power', 'Heater power', 'W', 1, 100_000),
  number('powerBand', 'Power meter, ±', 'W', 0.001, 10_000),
  number('flow', 'Flow by the precision meter', 'L/min', 0.001, 10_000),
  number('flowBand', 'Flow meter, ±', 'L/min', 0.0001, 1000),
];

function stepsOf(view: GuidedView): readonly StepPlan[] {
  return Array.from({ length: pointsOf(view) }, (_, i): readonly StepPlan[] => [
    {
      kind: 'confirm',
      id: `set-${i + 1}`,
      title: `Point ${i + 1}: flow and power are set`,
      text: 'Set the flow first, then the heater, by your own plan. Type what the instruments of the bench read, and ± what they may be off by their certificates.',
      asks: readOff,
    },
    {
      kind: 'measure',
      id: `point-${i + 1}`,
      title: `Point ${i + 1}: case and supply settle`,
      text: 'Change neither flow nor power.',
      blockS: 30,
      windowS,
      leastS: windowS,
      mostS: 3600,
      readings: [
        {
          reading: 'case',
          title: 'Case',
          quantity: 'temperature',
          read: (now) => valueOf(now, caseOf(now)),
          allowedDrift: driftK,
        },
        {
          reading: 'supply',
          title: 'Supply',
          quantity: 'temperature',
          read: (now) => valueOf(now, 'supply.temperature'),
          allowedDrift: driftK,
        },
      ],
    },
  ]).flat();
}

/** Case-to-supply resistance of one plate at flows and powers that a person sets, with the bench's own meters. */
export const plateResistance: GuidedTestKind = {
  kind: 'plateResistance',
  title: 'Resistance of a cold plate against flow',
  about:
    'At one flow and power after another: how many kelvin the case stands above the supply for each watt, and the curve through the points. Flow and power are read off the precision meters of the bench. The resistance is case to supply; at the same flow it is comparable.',
  criterion:
    'At each point, over three minutes, the drift of case and supply, its whole interval (95.45 %), lies within 0.3 K. Own rule; common practice, no source.',
  cautions: [
    'A heater without flow burns and may set fire: prove its hard-wired trip before, bring flow before power, and take power away before flow.',
    'Heater, plate and hoses are hot, and the water behind them may be: let them cool before hands are near.',
  ],
  asks: [
    {
      key: 'plate',
      title: 'Plate',
      kind: 'text',
      unit: '',
      least: null,
      most: null,
      usual: null,
    },
    {
      key: 'meters',
      title: 'Power meter and flow meter, each by number and certificate',
      kind: 'text',
      unit: '',
      least: null,
      most: null,
      usual: null,
    },
    { key: 'points', title: 'Points of flow and power', kind: 'number', unit: '', least: 1, most: 12, usual: 5 },
    { key: 'most', title: 'At most (0: told, not judged)', kind: 'number', unit: 'K/W', least: 0, most: 10, usual: 0 },
    {
      ...{ key: 'at', title: 'By the curve at this flow (0: at each point)', kind: 'number' },
      ...{ unit: 'L/min', least: 0, most: 10_000, usual: 0 },
    },
  ],
  choices: ({ plan }) => ({
    plate: plan.unit.plates.filter(({ slot }) => slot.temperature >= 0).map(({ id, name }) => ({ value: id, name })),
  }),
  settingFault: (view) => {
    if (!Number.isInteger(pointsOf(view))) return 'points of flow and power: a whole number';
    return has(view, caseOf(view)) ? null : `the unit has no ${caseOf(view)}; its plates stand in the site file`;
  },
  gates: [
    {
      code: 'GUIDED_NO_POINT',
      shut: ({ plan }) =>
        plan.unit.plates.some(({ slot }) => slot.temperature >= 0) ? null : 'no plate of this unit has a temperature',
    },
    needsPoints(['supply.temperature']),
    needsAccuracy((view) => ['supply.temperature', caseOf(view)]),
    needsMode(['running'], 'the loop has to be in normal running'),
    needsFlow,
    needsMargin(0),
  ],
  tellsWhatIsWhole: true,
  afterBreak: 'The heater may still be on: take power away first, then flow.',
  expectedAlarms: [],
  points: (view) => ['supply.temperature', caseOf(view)].filter((point) => has(view, point)),
  steps: stepsOf,
  judge(view, steps) {
    const points = platePoints(view, steps, pointsOf(view));
    const fit = plateCurve(points, view.plan.unit.design.commissioned.plateExponent);
    const byCurve = plateFigureByCurve(view, points, fit);
    return {
      figures: [...(byCurve === null ? [] : [byCurve]), ...points.map((point) => plateFigure(view, point))],
      notes: plateNotes(view, points, fit, byCurve !== null),
      ...(points.length > 0 ? { curve: drawnCurve(points, fit) } : {}),
    };
  },
};
