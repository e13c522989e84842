import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { ReportSources } from '../../../../../backend/src/runner/report/build-report';
import type { AlarmRecord } from '../../../../../backend/src/evaluation/pipeline/outputs';

/** 06:00 to 14:00 in Oslo on a summer day: UTC + 2 h. */
export const fromMs = Date.UTC(2031, 4, 6, 4);
export const toMs = fromMs + 8 * 3_600_000;
export const minutes = (count: number): number => fromMs + count * 60_000;
export const time = (ms: number): string => new Date(ms).toISOString();

/** A row that says nothing but what is given. */
export const row = (change: Partial<JournalRow>): JournalRow => ({
  ...{
    sequence: 1,
    time: time(fromMs),
    sourceTime: time(fromMs),
    kind: 'action',
    alarm: null,
    unit: null,
    entry: null,
  },
  ...{
    from: null,
    to: null,
    priority: null,
    value: null,
    limit: null,
    unit_of_measure: null,
    where: null,
    actor: null,
  },
  ...{ station: null, reason: null, hall: null, cause: null, since: null, foldedUnder: null, facts: null },
  ...{ previousHash: '', hash: '' },
  ...change,
});

/** A standing alarm of unit n1 in hall north. */
export const standing = (alarm: string, change: Partial<AlarmRecord> = {}): AlarmRecord => ({
  ...{ alarm, entry: alarm.split(':')[1] ?? '', unit: 'n1', hall: 'north', state: 'unacknowledged', active: true },
  ...{ priority: 2, sinceMs: minutes(10), stateSinceMs: minutes(10), value: null, limit: null, unitOfMeasure: null },
  ...{ where: null, foldedUnder: null, acknowledgedBy: null, acknowledgedAtMs: null },
  ...change,
});

const halls: Readonly<Record<string, string>> = { n1: 'north', n2: 'north', s1: 'south' };

/** A shift of which nothing is to be told. */
export const sources = (change: Partial<ReportSources> = {}): ReportSources => ({
  site: 'Quillmere',
  timeZone: 'Europe/Oslo',
  hall: null,
  hallOf: (unit) => halls[unit],
  fromMs,
  toMs,
  untilMs: toMs,
  madeMs: toMs + 60_000,
  madeBy: 'Ines',
  rows: [],
  then: { sequence: 9, alarms: [], alerts: [], permits: [] },
  notes: [],
  handovers: [],
  plant: { lineUp: [], smallestMargin: null, smallestReserve: null, topUp: [], log: [], gaps: [] },
  waterByHand: [],
  energy: null,
  performance: null,
  missing: [],
  ...change,
});
