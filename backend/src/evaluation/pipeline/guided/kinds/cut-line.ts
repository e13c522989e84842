import type { GuidedFigure, GuidedReading } from '@ebbline/shared/contract/guided-test';
import { airThroughOpening } from '@ebbline/shared/hydraulics/air-through-opening';
import { freeAirOfMass } from '@ebbline/shared/hydraulics/free-air';
import { celsius, pascalAbsolute } from '@ebbline/shared/units/quantity';
import { usable } from '../../../alarm-rules/judge-context';
import { needsMargin, needsMode, needsPoints, needsValues } from '../common-gates';
import { figureOf } from '../figure-of';
import type { StepRecord } from '../guided-record';
import type { Gate, GuidedTestKind, MeasurePlan, ReadingPlan } from '../guided-test';
import { ambientOf, chosen, has, uOf, valueOf, type GuidedView } from '../guided-view';

/** Larger openings let water fall past the air that comes in (from about 8.5 mm; Lautrup, Physics of Continuous Matter). */
const mostBoreMm = 5;
/** The least margin, worst of running and stopped, with its uncertainty, Pa. Own rule. */
const leastMarginPa = 5000;
/** The source has to carry this many times what the opening lets in. Own rule. */
const reserveTimes = 1.5;
/** Load that counts as off, of rated heat. Own rule. */
const offShare = 0.02;
/** Room air, °C: its part in a gas flow is 0.2 % a kelvin. */
const roomC = 20;

/** Air that an opening of the chosen bore lets in, free m³/s: choked, the most there can be (NACA Report 1135). */
function expectedAir(view: GuidedView): number {
  const areaM2 = (Math.PI / 4) * (chosen(view, 'bore') / 1000) ** 2;
  const ambient = ambientOf(view);
  const { openingDischargeCoefficient: coefficient } = view.plan.unit.design;
  return freeAirOfMass(
    airThroughOpening(coefficient, areaM2, pascalAbsolute(ambient), celsius(roomC), pascalAbsolute(0.3 * ambient)),
  );
}
const litres = (m3PerS: number): string => (m3PerS * 60_000).toFixed(0);

const measuredAt = (steps: readonly StepRecord[], step: string, reading: string): GuidedReading | undefined =>
  steps.find(({ id }) => id === step)?.measured?.readings.find((one) => one.reading === reading);

/**
 * What has come in by the opening so far, free m³/s: it is part of the gas load already, and off the reserve. Only what came since the
 * loop was measured as it is, and no more than the bore lets in: a leak that was there before is none of it.
 */
function cameIn(view: GuidedView): number {
  const before = measuredAt(view.steps, 'before', 'gasLoad');
  if (before === undefined) return 0;
  return Math.min(expectedAir(view), Math.max(0, valueOf(view, 'gasLoad') - before.mean));
}

const reserve: Gate = {
  code: 'GUIDED_RESERVE',
  shut(view) {
    const [left, u] = [valueOf(view, 'vacuumReserve'), uOf(view, 'vacuumReserve')];
    if (Number.isNaN(left) || Number.isNaN(u)) return 'the vacuum reserve, or its uncertainty, is not known';
    const bore = chosen(view, 'bore');
    const wanted = reserveTimes * expectedAir(view) - cameIn(view);
    if (left - 2 * u >= wanted) return null;
    return `vacuum reserve ${litres(left)} ± ${litres(2 * u)} free L/min; a bore of ${bore} mm asks for ${litres(wanted)} with room above it`;
  },
};
const loadOff: Gate = {
  code: 'GUIDED_LOAD',
  shut(view) {
    const { ratedHeatW, plateLimitC, fanPath } = view.plan.unit.design;
    const power = valueOf(view, 'chipPower');
    if (power <= offShare * (ratedHeatW ?? 0)) return null;
    const onFans = valueOf(view, 'temperatureOnFans') + 2 * uOf(view, 'temperatureOnFans');
    if (fanPath !== null && plateLimitC !== null && onFans < plateLimitC) return null;
    return 'the load is not off, and it is not proved that fans alone keep the chips below their limit';
  },
};
const trays = ['water.found', 'tray.water.found'] as const;
const tray: Gate = {
  code: 'GUIDED_TRAY',
  shut: (view) =>
    trays.every((point) => valueOf(view, point) === 0)
      ? null
      : 'a leak rope and a drip tray that tell of water, both dry and heard of, have to lie under the place',
};
const inTheLoop: Gate = {
  code: 'GUIDED_INPUT_BAD',
  shut({ pipeline, plan, settings }) {
    const branch = plan.unit.branches.find(({ id }) => id === settings['branch']);
    return usable(pipeline.state, branch?.slot.isolated ?? -1) >= 0.5
      ? 'the branch is valved off: no suction reaches it, and the margin of the loop does not hold there'
      : null;
  },
};
const permit: Gate = {
  code: 'GUIDED_PERMIT',
  shut({ pipeline, plan, settings }) {
    const open = [...pipeline.permits.values()].some(
      ({ unit, branch, closedMs, untilMs }) =>
        unit === plan.unit.id &&
        // Before a branch is chosen, whether there is one that could be.
        (settings['branch'] === undefined ? branch !== null : branch === settings['branch']) &&
        closedMs === null &&
        !(untilMs < (pipeline.steppedMs[plan.unitIndex] ?? Infinity)),
    );
    return open
      ? null
      : 'no permit is open in Ebbline for the branch, or its time is over; open one for a single branch on the unit’s own screen';
  },
};

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
      text: 'The second person stands at the unit and can shut the opening and call. A tray lies under it, live equipment near it is off or covered, and the permit hangs there. The valve with its bore is fitted and shut, and the bore was measured.',
    },
    {
      kind: 'confirm',
      id: 'second',
      title: `${secondName(view)} is at the unit`,
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
    const [before, open] = [measuredAt(steps, 'before', 'gasLoad'), measuredAt(steps, 'open', 'gasLoad')];
    const margin = measuredAt(steps, 'open', 'vacuumMarginWorst');
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
