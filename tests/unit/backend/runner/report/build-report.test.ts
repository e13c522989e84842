import type { Note } from '@ebbline/shared/contract/notes';
import { reportSchema } from '@ebbline/shared/contract/report';
import { describe, expect, it } from 'vitest';
import { buildReport } from '../../../../../backend/src/runner/report/build-report';
import { minutes, row, sources, standing, time, toMs } from './report-sources';

const then = (change: object) => ({ sequence: 9, alarms: [], alerts: [], permits: [], ...change });
const permit = (id: string, unit: string, untilMs: number) => ({
  ...{ id, unit, branch: 'r5', openedBy: 'Ines', station: '', openedMs: minutes(5), untilMs, comment: 'hose 4' },
  ...{ expectedInLeakM3PerS: 0.0005, waitsFor: [], closedBy: null, closedMs: null },
  baseline: { branchFlowM3PerS: null, gasLoadM3PerS: null, waterVolumeM3: null },
});
const note = (id: string, change: Partial<Note> = {}): Note => ({
  ...{ id, text: id, by: 'Ines', station: '', writtenAt: time(minutes(1)), about: time(minutes(1)) },
  ...{ hall: null, unit: null, alarm: null, corrects: null, why: null, correctedBy: null, withdrawn: null },
  ...change,
});

describe('the report of a shift', () => {
  it('fits its contract where there is nothing to tell', () => {
    const report = buildReport(sources());
    expect(reportSchema.parse(report)).toEqual(report);
    expect(report).toMatchObject({ standing: [], setAside: [], permits: [], changes: [], incomplete: [] });
  });

  it('groups what stands by first-out, through consequences of consequences, the most urgent on top', () => {
    const alarms = [
      standing('n1:TANK-1', { priority: 3, sinceMs: minutes(2) }),
      standing('n1:AIR-1', {
        ...{ priority: 1, sinceMs: minutes(20), state: 'acknowledged' },
        ...{ acknowledgedBy: 'Omar', acknowledgedAtMs: minutes(21) },
      }),
      standing('n1:FLOW-3', { foldedUnder: 'n1:AIR-1', sinceMs: minutes(22) }),
      standing('n1:TSUP-1', { foldedUnder: 'n1:FLOW-3', sinceMs: minutes(23) }),
      standing('n1:AIR-3', { foldedUnder: 'n1:GONE-1', sinceMs: minutes(30) }),
    ];
    const report = buildReport(sources({ then: then({ alarms }) }));
    expect(report.standing?.map(({ first, followed }) => [first.id, followed.map(({ id }) => id)])).toEqual([
      ['n1:AIR-1', ['n1:FLOW-3', 'n1:TSUP-1']],
      ['n1:AIR-3', []],
      ['n1:TANK-1', []],
    ]);
    expect(report.standing?.[0]?.first).toMatchObject({
      ...{ since: '2031-05-06T04:20:00.000Z', acknowledgedBy: 'Omar', acknowledgedAt: '2031-05-06T04:21:00.000Z' },
      title: 'Air is coming in: a line has opened',
    });
  });

  it('tells what is set aside apart, with its end, reason and what watches meanwhile, and never as standing', () => {
    const alarms = [
      standing('n1:AIR-3', {
        ...{ mode: 'outOfService', modeSinceMs: minutes(3), modeUntilMs: null, modeBy: 'Ada' },
        ...{ modeReason: 'meter is out', interimMeasures: 'gauge read each hour' },
      }),
      standing('n1:FIL-2', {
        ...{ state: 'normal', active: false, mode: 'shelved', modeSinceMs: minutes(4), modeUntilMs: minutes(64) },
        ...{ modeBy: 'Ines', modeReason: 'filter is changed' },
      }),
      standing('n1:FLOW-1', { state: 'normal', active: false }),
    ];
    const { standing: stand, setAside } = buildReport(sources({ then: then({ alarms }) }));
    expect(stand).toEqual([]);
    expect(setAside).toMatchObject([
      { id: 'n1:FIL-2', mode: 'shelved', until: '2031-05-06T05:04:00.000Z', by: 'Ines', active: false },
      { id: 'n1:AIR-3', until: null, reason: 'meter is out', interimMeasures: 'gauge read each hour', active: true },
    ]);
  });

  it('calls a permit overdue by the end of the shift, those that end first on top', () => {
    const permits = [permit('later', 'n1', toMs + 1), permit('over', 'n1', toMs)];
    const told = buildReport(sources({ then: then({ permits }) })).permits;
    expect(told?.map(({ id, overdue }) => [id, overdue])).toEqual([
      ['over', true],
      ['later', false],
    ]);
  });

  it('of one hall tells what is of it, of its units, or of no hall', () => {
    const alarms = [
      standing('n1:AIR-1'),
      standing('s1:AIR-1', { unit: 's1', hall: 'south' }),
      standing('SYS-2', { unit: null, hall: null, entry: 'SYS-2' }),
    ];
    const rows = [
      row({ sequence: 1, cause: 'permitClosed', unit: 'n2' }),
      row({ sequence: 2, cause: 'permitClosed', unit: 's1' }),
      row({ sequence: 3, cause: 'settingChanged', entry: 'AIR-1', hall: 'south' }),
      row({ sequence: 4, cause: 'personAdded', reason: 'Omar added as operator' }),
    ];
    const permits = [permit('n', 'n2', toMs), permit('s', 's1', toMs)];
    const report = buildReport(sources({ hall: 'north', rows, then: then({ alarms, permits }) }));
    expect(report.standing?.map(({ first }) => first.id)).toEqual(['n1:AIR-1', 'SYS-2']);
    expect(report.permits?.map(({ id }) => id)).toEqual(['n']);
    expect(report.changes.map(({ sequence }) => sequence)).toEqual([1, 4]);
  });

  it('shows notes that are in force', () => {
    const gone = { by: 'Omar', at: time(minutes(9)), reason: 'another rack' };
    const notes = [note('n1', { correctedBy: 'n2' }), note('n2', { corrects: 'n1' }), note('n3', { withdrawn: gone })];
    expect(buildReport(sources({ notes })).notes.map(({ id }) => id)).toEqual(['n2']);
  });

  it('says that it can not tell what stood where the rows were sealed, and not that nothing did', () => {
    const report = buildReport(sources({ then: null, missing: ['Heat and energy: not yet.'] }));
    expect(report).toMatchObject({ standing: null, setAside: null, permits: null, alerts: null });
    expect(report.incomplete).toEqual([
      'Heat and energy: not yet.',
      'What stood at the end of this time can not be told any more: rows of the journal from then were sealed into files.',
    ]);
  });
});
