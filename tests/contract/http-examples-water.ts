import type { RouteKey } from '@ebbline/shared/contract/route-table';
import { reading, type Example } from './http-example';

const heat = { energy: 7.2e8, expandedUncertainty: 1.4e7, measuredSeconds: 3600, wantedSeconds: 3600, share: 1 };
const half = { energy: 3.1e8, expandedUncertainty: null, measuredSeconds: 1800, wantedSeconds: 3600, share: 0.5 };
const none = { energy: null, expandedUncertainty: null, measuredSeconds: 0, wantedSeconds: 0, share: null };
const hour = {
  start: '2031-05-06T07:00:00.000Z',
  end: '2031-05-06T08:00:00.000Z',
  heatRemoved: heat,
  facilityHeat: none,
  chipEnergy: half,
  unitEnergy: { ...heat, energy: 1.1e7 },
  heatPerUnitEnergy: 65.5,
};

const entry = {
  id: 'N1:water.molybdate.hand:1935909289250',
  unit: 'N1',
  parameter: 'molybdate',
  point: 'water.molybdate.hand',
  value: 0.04,
  unit_of_measure: 'kg/m3',
  typed: { value: 66.7, unit: 'mg/L', as: 'MoO4', sampleTemperature: null, method: 'laboratory' },
  takenAt: '2031-05-06T06:00:00.000Z',
  enteredAt: '2031-05-06T07:08:09.250Z',
  by: 'Ines',
  station: '127.0.0.1',
  note: 'laboratory sheet 12',
  corrects: null,
  correctedBy: null,
};

const withdrawn = { ...entry, id: `${entry.id}:2`, value: null, typed: null, corrects: entry.id };

const molybdate = {
  parameter: 'molybdate',
  title: 'Molybdate, as Mo',
  unit_of_measure: 'kg/m3',
  shownAs: 'MoO4',
  referenceTemperature: null,
  origin: 'hand',
  value: 0.0667,
  reading: { ...reading, id: 'water.molybdate.hand', value: 0.04, unit: 'kg/m3', expandedUncertainty: null },
  band: { lowLow: null, low: 0.05, high: 0.1, highHigh: null, basis: 'stated by the site' },
  word: 'inBand',
  sensor: null,
  lastCalibration: null,
  byHand: true,
  dueEverySeconds: 604_800,
  dueAt: '2031-05-13T06:00:00.000Z',
  overdue: false,
  lastEntry: entry,
};

const sample = { takenAt: '2031-05-06T06:00:00Z', method: 'laboratory' };
const typed = { unit: 'mg/L', as: 'MoO4', sampleTemperature: null, ...sample, operator: 'Ines' };

/** Bodies of energy totals, hand entries and water quality. */
export const waterExamples = {
  'get /api/energy': {
    query: { unit: 'N1', from: '2031-05-06T07:00:00Z', to: '2031-05-06T08:00:00Z', by: 'hour' },
    reply: {
      hall: null,
      unit: 'N1',
      units: ['N1'],
      timeZone: 'Europe/Oslo',
      by: 'hour',
      from: hour.start,
      to: hour.end,
      periods: [hour],
      total: { ...hour, heatPerUnitEnergy: null },
    },
  },
  'get /api/units/{unit}/water': {
    reply: {
      unit: 'N1',
      time: '2031-05-06T07:08:09.250Z',
      parameters: [
        molybdate,
        {
          ...molybdate,
          parameter: 'conductivity',
          shownAs: null,
          referenceTemperature: 25,
          origin: 'none',
          value: null,
          reading: null,
          word: 'unknown',
          sensor: 'conductivity25',
          lastCalibration: '2031-04-01',
          byHand: false,
          dueEverySeconds: null,
          dueAt: null,
          lastEntry: null,
        },
      ],
    },
  },
  'get /api/units/{unit}/hand-entries': {
    reply: {
      unit: 'N1',
      time: '2031-05-06T07:08:09.250Z',
      entries: [withdrawn, { ...entry, correctedBy: withdrawn.id }],
    },
  },
  'post /api/units/{unit}/hand-entries': {
    body: { ...typed, parameter: 'molybdate', value: 66.7, note: 'laboratory sheet 12' },
    reply: entry,
  },
  'post /api/units/{unit}/hand-entries/{id}/correct': {
    body: { ...typed, value: 60.2, note: 'a slip of the pen' },
    reply: { ...entry, id: `${entry.id}:3`, value: 0.0361, typed: { ...entry.typed, value: 60.2 }, corrects: entry.id },
  },
  'post /api/units/{unit}/hand-entries/{id}/withdraw': {
    body: { operator: 'Ines', note: 'of another unit' },
    reply: withdrawn,
  },
} as const satisfies Partial<Record<RouteKey, Example>>;
