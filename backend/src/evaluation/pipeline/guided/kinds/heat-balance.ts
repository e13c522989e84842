import type { GuidedFigure, GuidedReading } from '@ebbline/shared/contract/guided-test';
import { heatBalance as ratioOf } from '@ebbline/shared/heat/heat-balance';
import { coverageFactor, rectangular } from '@ebbline/shared/uncertainty/combine';
import { needsAccuracy, needsFlow, needsMode, needsPoints, needsValues } from '../common-gates';
import { figureOf } from '../figure-of';
import type { Gate, GuidedTestKind, ReadingPlan } from '../guided-test';
import { chosen, has, uOf, valueOf, type GuidedView } from '../guided-view';

/** Heat may drift by this share over the window, water by so many kelvin. Own rule. */
const heatDriftShare = 0.03;
const waterDriftK = 0.3;
const windowS = 300;
/** Below this share of rated heat the rise is too small to accept anything by. Own rule. */
const leastLoadShare = 0.2;
/** Specific heat of the water that stores, J/m³K: rounded, as it stands in an uncertainty only. */
const storedPerM3K = 4.15e6;

const others = ['facilityHeat', 'chipPower'] as const;
/** Every unit has a place for both; what they are worked out from, not every unit has. */
const compared = (view: GuidedView): readonly (typeof others)[number][] =>
  others.filter((point) =>
    point === 'chipPower'
      ? view.plan.chipPowerSlots.length > 0
      : ['facility.flow', 'facility.supply.temperature', 'facility.return.temperature'].every((one) => has(view, one)),
  );

const gates: readonly Gate[] = [
  needsPoints(['heatRemoved', 'supply.temperature', 'return.temperature']),
  {
    code: 'GUIDED_NO_POINT',
    shut: (view) =>
      compared(view).length > 0 ? null : 'the unit has neither facility heat nor chip power to hold its heat against',
  },
  needsMode(['running'], 'the balance is taken at a steady load, in normal running'),
  needsFlow,
  needsAccuracy((view) => ['heatRemoved', ...compared(view)]),
  needsValues((view) => ['heatRemoved', ...compared(view)]),
  {
    code: 'GUIDED_LOAD',
    shut(view) {
      const rated = view.plan.unit.design.ratedHeatW;
      const heat = valueOf(view, 'heatRemoved');
      if (rated === null || Number.isNaN(heat) || heat >= leastLoadShare * rated) return null;
      return `heat removed ${(heat / 1000).toFixed(1)} kW is less than ${100 * leastLoadShare} % of rated: the rise of temperature is too small`;
    },
  },
];

const titles = {
  heatRemoved: 'Heat removed',
  facilityHeat: 'Facility heat',
  chipPower: 'Chip power',
} as const;

const heat = (view: GuidedView, point: keyof typeof titles): ReadingPlan => ({
  reading: point,
  title: titles[point],
  quantity: 'power',
  read: (now) => valueOf(now, point),
  allowedDrift: heatDriftShare * Math.abs(valueOf(view, 'heatRemoved')),
});
const water = (reading: 'supply.temperature' | 'return.temperature', title: string): ReadingPlan => ({
  reading,
  title,
  quantity: 'temperature',
  read: (now) => valueOf(now, reading),
  allowedDrift: waterDriftK,
});

/** What the loop's water may store while it drifts as far as is allowed, W at most; 0 where its volume is not stated. */
const storedW = ({ plan }: GuidedView): number =>
  ((plan.unit.design.volumes.waterM3 ?? 0) * storedPerM3K * waterDriftK) / windowS;

/** Numerator over denominator with relative parts (GUM eq. 12), and what the loop's water may have stored meanwhile. */
function ratio(
  view: GuidedView,
  title: string,
  over: GuidedReading,
  under: GuidedReading,
  limits: Pick<GuidedFigure, 'low' | 'high'>,
): GuidedFigure {
  const value = ratioOf(over.mean as Parameters<typeof ratioOf>[0], under.mean as Parameters<typeof ratioOf>[1]);
  const share = (one: GuidedReading, u: number): number => Math.abs((value * u) / one.mean);
  const loop = over.reading === 'heatRemoved' ? over : under;
  return figureOf({
    title,
    quantity: 'ratio',
    value,
    ...limits,
    scatter: {
      from: 'scatter',
      contribution: Math.hypot(share(over, over.scatter), share(under, under.scatter)),
      degreesOfFreedom: Math.min(over.degreesOfFreedom, under.degreesOfFreedom),
    },
    others: [
      { from: over.reading, contribution: share(over, uOf(view, over.reading)) },
      { from: under.reading, contribution: share(under, uOf(view, under.reading)) },
      { from: 'heat stored in the water', contribution: share(loop, rectangular(storedW(view))) },
    ],
  });
}

/**
 * Heat in the loop beside heat in the facility water and beside the power of the chips, each as a ratio with its interval
 * (first law, steady; GUM).
 */
export const heatBalance: GuidedTestKind = {
  kind: 'heatBalance',
  title: 'Heat balance',
  about:
    'At a steady load the heat that the loop carries has to be found again in the facility water, and the share of the chips’ power that it takes has to be what was agreed.',
  criterion:
    'Over five minutes the drift of each heat, its whole interval (95.45 %), lies within 3 % of the heat removed, that of supply and return within 0.3 K. Own rule; common practice, no source.',
  cautions: [
    'Take the load as it runs: for this test nobody moves a limit or a set point of a plant that carries work.',
  ],
  asks: [
    { key: 'differ', title: 'Facility heat may differ by', kind: 'number', unit: '%', least: 1, most: 30, usual: 10 },
    {
      key: 'captureLeast',
      title: 'Captured of the chips’ power, at least',
      kind: 'number',
      unit: '%',
      least: 10,
      most: 110,
      usual: 70,
    },
    {
      key: 'captureMost',
      title: 'Captured of the chips’ power, at most',
      kind: 'number',
      unit: '%',
      least: 20,
      most: 130,
      usual: 105,
    },
  ],
  gates,
  expectedAlarms: [],
  settingFault: (view) =>
    chosen(view, 'captureLeast') < chosen(view, 'captureMost')
      ? null
      : 'the least share captured has to be below the most',
  points: (view) =>
    [
      'loop.flow',
      'supply.temperature',
      'return.temperature',
      'facility.flow',
      'facility.supply.temperature',
      'facility.return.temperature',
      'heatRemoved',
      ...compared(view),
    ].filter((point) => has(view, point)),
  steps: (view) => [
    {
      kind: 'confirm',
      id: 'steady',
      title: 'The load is steady',
      text: 'No work on the loop or on the facility water, no change of load that is planned within the next half hour, no branch shut or opened.',
    },
    {
      kind: 'measure',
      id: 'balance',
      title: 'Heat on both sides',
      text: 'Leave load, set points and valves as they are.',
      blockS: 30,
      windowS,
      leastS: windowS,
      mostS: 3600,
      readings: [
        heat(view, 'heatRemoved'),
        ...compared(view).map((point) => heat(view, point)),
        water('supply.temperature', 'Supply'),
        water('return.temperature', 'Return'),
      ],
    },
  ],
  judge(view, steps) {
    const readings = steps.flatMap(({ measured }) => measured?.readings ?? []);
    const find = (point: string): GuidedReading | undefined => readings.find(({ reading }) => reading === point);
    const [loop, facility, chips] = [find('heatRemoved'), find('facilityHeat'), find('chipPower')];
    const figures: GuidedFigure[] = [];
    if (loop === undefined) return { figures, notes: [] };
    const differ = chosen(view, 'differ') / 100;
    if (facility !== undefined)
      figures.push(ratio(view, 'Facility heat ÷ heat removed', facility, loop, { low: 1 - differ, high: 1 + differ }));
    if (chips !== undefined) {
      const limits = { low: chosen(view, 'captureLeast') / 100, high: chosen(view, 'captureMost') / 100 };
      figures.push(ratio(view, 'Heat removed ÷ chip power', loop, chips, limits));
      const gap = chips.mean - loop.mean;
      const parts = [
        { from: 'heatRemoved', contribution: uOf(view, 'heatRemoved') },
        { from: 'chipPower', contribution: uOf(view, 'chipPower') },
        { from: 'heat stored in the water', contribution: rectangular(storedW(view)) },
      ];
      const scatter = Math.hypot(chips.scatter, loop.scatter);
      const degreesOfFreedom = Math.min(chips.degreesOfFreedom, loop.degreesOfFreedom);
      const by = { from: 'scatter', contribution: scatter, degreesOfFreedom };
      const none = { low: null, high: null };
      figures.push(
        figureOf({
          title: 'Chip power less heat removed',
          quantity: 'power',
          value: gap,
          ...none,
          scatter: by,
          others: parts,
        }),
      );
    }
    return {
      figures,
      notes: [
        `Chip power that the loop does not take leaves by air, pipes and boards. k = ${coverageFactor} where degrees of freedom are many.`,
        ...(view.plan.unit.design.volumes.waterM3 === null
          ? ['The site file states no volume of water: what it may have stored is in no interval.']
          : []),
      ],
    };
  },
};
