import type { GuidedFigure, GuidedReading } from '@ebbline/shared/contract/guided-test';
import { rectangular } from '@ebbline/shared/uncertainty/combine';
import { followsAmbient } from '../../../derive/standard-uncertainty';
import { flows, sourceRuns } from '../../tightness/plant-at-rest';
import { figureOf } from '../figure-of';
import type { Gate, GuidedTestKind, ReadingPlan } from '../guided-test';
import { ambientOf, ambientU, slotOf, valueOf, type GuidedView } from '../guided-view';
import { statedBand } from '../stated-band';
import { columnOf, zeroPlaces, type ZeroPlace } from './zero-places';

/** A drift of this share of what a sensor may be off, over the window, counts as none. Own rule. */
const driftShare = 0.25;
/** A tank counts as vented within so much of the room, whatever its sensor is off, Pa. Own rule. */
const ventedWithinPa = 5000;

/** Where the sensor stands is known, and how much it may be off. */
const judgeable = (view: GuidedView): readonly ZeroPlace[] =>
  zeroPlaces(view).filter(({ point, heightM }) => Number.isFinite(heightM) && statedBand(view, point) > 0);

/** True where no pressure has a value: then what its accuracy is of is not there either, whatever the site file states. */
const unread = (view: GuidedView): boolean => zeroPlaces(view).every(({ point }) => Number.isNaN(valueOf(view, point)));

/** What the sensor reads beside what it has to read, Pa. */
const offsetNow = (view: GuidedView, place: ZeroPlace): number =>
  valueOf(view, place.point) - ambientOf(view) - (place.heightM === 0 ? 0 : columnOf(view, place) * place.heightM);

const gates: readonly Gate[] = [
  {
    code: 'GUIDED_NO_POINT',
    shut: (view) =>
      zeroPlaces(view).some(({ heightM }) => Number.isFinite(heightM)) && view.plan.ambientSlot >= 0
        ? null
        : 'needs a barometer in the hall and a pressure whose elevation the site file states',
  },
  {
    code: 'GUIDED_NO_ACCURACY',
    shut: (view) =>
      (judgeable(view).length > 0 || unread(view)) && (ambientU(view) >= 0 || Number.isNaN(ambientOf(view)))
        ? null
        : 'the site file states no accuracy for the barometer, or for any of the pressures: there is nothing to hold the reading against',
  },
  {
    code: 'GUIDED_INPUT_BAD',
    shut: (view) =>
      Number.isNaN(ambientOf(view))
        ? 'the barometer of the hall is bad or stale; see the points of the hall'
        : // One that has begun is ended by the loss of what it measures.
          view.steps.length === 0 && unread(view)
          ? 'no pressure of the unit has a good value; see its points'
          : null,
  },
  {
    code: 'GUIDED_SOURCE_RUNS',
    shut: (view) =>
      sourceRuns(view.pipeline, view.plan) === true
        ? 'the vacuum source runs: the check waits for a planned stop of the unit'
        : null,
  },
  {
    code: 'GUIDED_FLOW',
    shut: (view) =>
      flows(view.pipeline, view.plan) === true
        ? 'water flows: the check waits for a planned stop, with the load off'
        : null,
  },
  { code: 'GUIDED_NOT_VENTED', shut: notVented },
];

function notVented(view: GuidedView): string | null {
  const waits = 'the check waits for work under a permit for which the unit is vented anyway';
  if (view.mode.told && view.mode.mode !== 'vented') return `the unit’s mode is not “vented”: ${waits}`;
  const tanks = zeroPlaces(view).filter(({ temperature }) => temperature === null);
  const away = tanks.filter((place) => Math.abs(offsetNow(view, place)) > ventedWithinPa);
  return tanks.length > 0 && away.length === tanks.length
    ? `no tank stands near the pressure of the room: ${waits}`
    : null;
}

const readingOf = (view: GuidedView, place: ZeroPlace): ReadingPlan => ({
  reading: place.point,
  title: place.title,
  quantity: 'pressureDifference',
  read: (now) => offsetNow(now, zeroPlaces(now).find(({ point }) => point === place.point) ?? place),
  allowedDrift: driftShare * statedBand(view, place.point),
});

/** A column that may stand lower by more than the sensor may be off shows nothing of the sensor. Own rule. */
const isJudged = (view: GuidedView, place: ZeroPlace): boolean =>
  place.runsBackM === 0 || columnOf(view, place) * place.runsBackM <= statedBand(view, place.point);

function toldOnly({ title, runsBackM }: ZeroPlace): string {
  const why = Number.isNaN(runsBackM)
    ? 'how far its water has run back to the supply tank is not known'
    : `the supply tank’s surface stands ${runsBackM.toFixed(2)} m below the return’s inlet, so its water may have run back by as much`;
  return `${title}: told, not judged, as ${why}.`;
}

function figure(view: GuidedView, place: ZeroPlace, measured: GuidedReading): GuidedFigure {
  const band = statedBand(view, place.point);
  const column = place.heightM === 0 ? 0 : columnOf(view, place);
  // Of a gauge sensor the barometer cancels: it reads against the room.
  const ofRoom = followsAmbient(view.pipeline.site.slots, slotOf(view, place.point)) ? 0 : ambientU(view);
  // Stated is how well the height of the surface above the sensor is known, not that of each above the floor.
  const elevationU = place.temperature === null ? 0 : rectangular(view.plan.unit.design.elevationAccuracyM);
  const runsBack = column * place.runsBackM;
  const judges = isJudged(view, place);
  return figureOf({
    title: place.title,
    quantity: 'pressureDifference',
    value: measured.mean,
    low: judges ? -band : null,
    high: judges ? band : null,
    scatter: { from: 'scatter', contribution: measured.scatter, degreesOfFreedom: measured.degreesOfFreedom },
    others: [
      { from: 'ambient.pressure', contribution: ofRoom },
      { from: 'elevations.accuracy', contribution: column * elevationU },
      { from: 'level', contribution: column * place.levelU },
      { from: 'water that may have run back', contribution: runsBack > 0 ? rectangular(runsBack) : 0 },
    ],
  });
}

/**
 * Vented and stopped, every pressure reads barometer + ρ g h (hydrostatics): a free calibration. Each offset is held against the
 * accuracy that the site file states.
 */
export const zeroCheck: GuidedTestKind = {
  kind: 'zeroCheck',
  title: 'Zero check of pressures',
  about:
    'While the unit is vented and stands for other work, each pressure has to read the barometer and the water above it. What it reads beside that is held against the accuracy that the site file states. Common practice: quarterly.',
  criterion:
    'Each reading’s drift over one minute, its whole interval (95.45 %), lies within a quarter of the sensor’s stated accuracy. Own rule; common practice, no source.',
  cautions: [
    'A vented loop has no vacuum that holds its water in: low points stand above the room by their head of water, 10 kPa a metre. Its drip trays and ropes matter now.',
    'Sensors may sit behind shut valves with hot or pressurised water in their lines: open none of them for this check.',
  ],
  asks: [],
  gates,
  expectedAlarms: [],
  points: (view) => ['ambient.pressure', ...judgeable(view).map(({ point }) => point)],
  steps: (view) => [
    {
      kind: 'confirm',
      id: 'stands',
      title: 'The unit is vented and stands',
      text: 'It was vented for other work, by your own procedure and under its permit; load off, pumps and vacuum source stopped and locked out. Water has settled for ten minutes, and no sensor is shut off from the loop. Do not vent the unit for this check.',
    },
    {
      kind: 'measure',
      id: 'zero',
      title: 'Every pressure beside barometer and head of water',
      text: 'Leave everything as it is until each reading has been steady for a minute.',
      blockS: 10,
      windowS: 60,
      leastS: 60,
      mostS: 900,
      readings: judgeable(view).map((place) => readingOf(view, place)),
    },
  ],
  judge(view, steps) {
    const readings = steps.flatMap(({ measured }) => measured?.readings ?? []);
    const figures = judgeable(view).flatMap((place) => {
      const measured = readings.find(({ reading }) => reading === place.point);
      return measured === undefined ? [] : [figure(view, place, measured)];
    });
    const left = zeroPlaces(view).filter(({ point }) => readings.every(({ reading }) => reading !== point));
    return {
      figures,
      notes: [
        ...judgeable(view)
          .filter((place) => !isJudged(view, place))
          .map(toldOnly),
        ...left.map(
          ({ title }) =>
            `${title}: not judged, as its elevation, its accuracy, or the level of the water above it is not stated or not known.`,
        ),
      ],
    };
  },
};
