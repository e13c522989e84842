import type { AlarmPerformance, Flood } from '@ebbline/shared/contract/alarm-performance';
import { toCsv, type CsvCell } from './csv/to-csv';

const header = ['part', 'id', 'title', 'unit', 'value', 'unit_of_measure', 'acceptable', 'limit', 'verdict', 'note'];

type Row = readonly CsvCell[];

/** All figures as one table: `part` tells what a line is of, `note` what there is no column for. */
export function performanceTable(report: AlarmPerformance): string {
  return toCsv(header, [
    ...periodRows(report),
    ...report.figures.map(({ id, title, value, unit, acceptable, limit, verdict, band, source }): Row => {
      const note = band === null || band === undefined ? source : `${band}; ${source}`;
      return ['figure', id, title, null, value, unit, acceptable, limit, verdict, note];
    }),
    ...report.mix.map(({ priority, annunciations, share, target }): Row => {
      const title = `annunciations of priority ${priority}`;
      return ['mix', String(priority), title, null, share, '%', target, null, null, `${annunciations} annunciations`];
    }),
    ...report.mostFrequent.map(({ alarm, title, unit, annunciations, share }): Row => {
      const note = `${share.toFixed(1)} % of all`;
      return ['mostFrequent', alarm, title, unit, annunciations, 'annunciations', null, null, null, note];
    }),
    ...report.chattering.map(({ alarm, title, unit, times, proposal }): Row => {
      return ['chattering', alarm, title, unit, times, 'times', null, null, null, noteOf(proposal)];
    }),
    ...report.fleeting.map(({ alarm, title, unit, times, proposal }): Row => {
      return ['fleeting', alarm, title, unit, times, 'times', null, null, null, noteOf(proposal)];
    }),
    ...report.stale.map(({ alarm, title, unit, hours, since }): Row => {
      return ['stale', alarm, title, unit, hours, 'h', null, null, null, `since ${since}`];
    }),
    ...report.floods.map(floodRow),
    ...spreadRows('acknowledging', report.acknowledging),
    ...spreadRows('clearing', report.clearing),
    ...report.perHour.map(({ from, annunciations }): Row => {
      return ['perHour', from, 'annunciations in the hour from', null, annunciations, 'annunciations', ...none];
    }),
  ]);
}

const none = [null, null, null, null] as const;

const periodRows = ({ from, to, hall, days, enough, annunciations }: AlarmPerformance): Row[] => [
  ['period', 'from', 'begin of the period', null, null, null, null, null, null, from],
  ['period', 'to', 'end of the period', null, null, null, null, null, null, to],
  ['period', 'hall', 'hall', null, null, null, null, null, null, hall ?? 'whole site'],
  [
    'period',
    'days',
    'days',
    null,
    days,
    'd',
    ...none.slice(1),
    enough ? null : 'less than 30: too short to conclude from',
  ],
  ['period', 'annunciations', 'annunciations', null, annunciations, 'annunciations', ...none],
];

const noteOf = (proposal: AlarmPerformance['chattering'][number]['proposal']): string | null => proposal?.why ?? null;

function floodRow({ from, to, annunciations, mostInTenMinutes, firstOuts }: Flood): Row {
  const began = firstOuts.map(({ alarm }) => alarm).join(' ');
  const note = `until ${to ?? 'now'}; ${mostInTenMinutes} in ten minutes at most; began with ${began}`;
  return ['flood', from, 'flood from', null, annunciations, 'annunciations', null, null, null, note];
}

const spreadRows = (part: string, spreads: AlarmPerformance['acknowledging']): Row[] =>
  spreads.flatMap(({ priority, count, medianSeconds, p90Seconds }): Row[] => [
    [part, `priority${priority}Median`, 'median', null, medianSeconds, 's', null, null, null, `${count} values`],
    [part, `priority${priority}P90`, 'nine tenths', null, p90Seconds, 's', null, null, null, `${count} values`],
  ]);
