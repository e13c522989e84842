import { reading, type Example } from './http-example';

const figure = { value: 4180, age: 0, quality: 'good', reasons: [], expandedUncertainty: 620 };
const noFigure = { value: null, age: null, quality: 'bad', reasons: ['notRecorded'], expandedUncertainty: null };

const line = {
  unit: 'N1',
  name: 'Unit N1',
  mode: 'running',
  modeKnown: true,
  age: 1,
  pressureWindow: {
    lowestPa: 38_400,
    lowestWhere: 'Top of the return manifold',
    highestPa: 96_900,
    highestWhere: 'Supply main under the floor',
    ambientPa: 101_080,
    lowerWallPa: 9100,
    lowerWallKind: 'node',
    lowerWallWhere: 'Top of the return manifold',
    lowerWallMargin: { ...figure, value: 29_300 },
    vacuumMargin: figure,
    vacuumMarginWorst: { ...figure, quality: 'uncertain', reasons: ['uncertainThen'] },
    lowerWallGuardPa: 5000,
    vacuumMarginGuardPa: 5000,
    hourLowestPa: 37_900,
    hourHighestPa: null,
  },
  heatRemoved: { ...figure, value: 281_000 },
  chipPower: noFigure,
  drivingPressure: noFigure,
  vacuumReserve: noFigure,
  openingsCarried: noFigure,
  openingsCarriedAll: noFigure,
  openPermits: 1,
  ventedNotProtected: false,
  worst: {
    id: 'N1:AIR-1',
    entry: 'AIR-1',
    title: 'Air is being drawn in',
    priority: 1,
    state: 'unacknowledged',
    where: 'r5',
    action: 'Find the rack that is named; close its valves.',
    since: '2031-05-06T07:08:09.000Z',
    detail: 'At rack 5, since eleven seconds.',
  },
  moreAlarms: 0,
  setAsideHolding: 1,
};

const permit = {
  id: 'N1:r5:1',
  unit: 'N1',
  branch: 'r5',
  state: 'overdue',
  openedBy: 'Ines',
  openedAt: '2031-05-06T06:00:00.000Z',
  until: '2031-05-06T07:00:00.000Z',
  expectedInLeak: 0.0005,
  comment: 'hose of server 4',
  waitsFor: ['branchFlow'],
  closedBy: null,
  closedAt: null,
};

const picture = {
  time: '2031-05-06T07:08:09.999Z',
  clock: { kind: 'wall', now: '2031-05-06T07:08:09.999Z' },
  standing: { 1: 1, 2: 0, 3: 0 },
  hall: 'north',
  permits: [permit],
};

const moment = {
  at: '2031-05-06T07:08:09.000Z',
  now: '2031-05-06T21:10:00.000Z',
  resolution: 'second',
  silent: null,
  notes: ['Names, places, heights and limits are those of the site file in force now.'],
};

const alarm = {
  ...line.worst,
  unit: 'N1',
  hall: 'north',
  stateSince: '2031-05-06T07:08:09.000Z',
  value: 0.0021,
  limit: 0.0005,
  unit_of_measure: 'm3/s',
  cause: 'A hose or a fitting below ambient pressure is open.',
  consequence: 'Air goes in; no water comes out while every wetted point stays below ambient.',
  timeToRespondSeconds: 300,
  acknowledgedBy: null,
  acknowledgedAt: null,
  foldedUnder: null,
};

/** Examples of past seconds and of what happened in a period. */
export const pastExamples = {
  'get /api/past/halls/{hall}': {
    query: { at: '2031-05-06T07:08:09.400Z' },
    reply: {
      ...moment,
      frame: {
        ...picture,
        screen: 'hall',
        name: 'North hall',
        ambientPressure: { ...figure, value: 101_080 },
        temperature: noFigure,
        dewPoint: noFigure,
        heatRemoved: { ...figure, value: 281_000 },
        chipPower: noFigure,
        smallestMargin: { unit: 'N1', margin: figure },
        loops: [line],
        besideSetAside: 1,
      },
    },
  },
  'get /api/past/halls/{hall}/trails': {
    query: { at: '2031-05-06T07:08:09.400Z' },
    reply: {
      hall: 'north',
      minute: '2031-05-06T07:08:00.000Z',
      trails: [
        {
          unit: 'N1',
          lowestPa: [...Array<null>(59).fill(null), 38_400],
          highestPa: [...Array<null>(59).fill(null), 96_900],
        },
      ],
    },
  },
  'get /api/past/units/{unit}': {
    query: { at: '2031-05-06T07:08:09.000Z' },
    reply: {
      ...moment,
      silent: { from: '2031-05-06T07:00:00.000Z', to: null },
      frame: {
        ...picture,
        screen: 'loop',
        unit: 'N1',
        line,
        points: [reading],
        path: [
          {
            id: 'supplyTank',
            name: 'Supply tank',
            elevation: 1,
            pressurePa: 88_000,
            vapourPressurePa: 5900,
            temperature: 36.1,
            outsideUnit: false,
          },
        ],
        branches: [
          {
            id: 'r5',
            name: 'Rack 5',
            flow: figure,
            ratedFlow: 0.00072,
            returnTemperature: figure,
            hottestPlate: noFigure,
            hottestPlateId: null,
            heatRemoved: noFigure,
            returnPressure: noFigure,
            vacuumMargin: noFigure,
            flowShare: figure,
            state: 'openUnderPermit',
          },
        ],
        servers: [
          {
            id: 's1',
            name: 'Server 1',
            branch: 'r5',
            returnTemperature: figure,
            power: figure,
            fanSpeed: noFigure,
            hottestPlate: noFigure,
            hottestPlateId: null,
          },
        ],
        loop: { id: 'N1', name: 'Unit N1', units: ['N1'], unitsNeeded: 1 },
        alerts: [],
        alarms: [alarm],
        besideSetAside: 1,
      },
    },
  },
  'get /api/past/marks': {
    query: { hall: 'north', from: '2031-05-06T07:00:00.000Z', to: '2031-05-06T08:00:00.000Z' },
    reply: {
      from: '2031-05-06T07:00:00.000Z',
      to: '2031-05-06T08:00:00.000Z',
      now: '2031-05-06T21:10:00.000Z',
      marks: [
        {
          time: '2031-05-06T07:08:09.000Z',
          kind: 'raised',
          alarm: 'N1:AIR-1',
          unit: 'N1',
          title: 'Air is being drawn in',
          where: 'r5',
          priority: 1,
          firstOut: true,
          foldedUnder: null,
        },
      ],
      more: false,
      gaps: [{ from: '2031-05-06T07:30:00.000Z', to: '2031-05-06T07:31:00.000Z' }],
    },
  },
} as const satisfies Readonly<Record<string, Example>>;
