import type { AlarmState, JournalRow } from '@ebbline/shared/contract/alarm';
import { describe, expect, it } from 'vitest';
import { journalActor, rowTime } from '../../../../frontend/src/screens/alarms/journal-actor';
import { journalLine } from '../../../../frontend/src/screens/alarms/journal-line';
import { testOfRow } from '../../../../frontend/src/screens/alarms/test-of-row';

const row: JournalRow = {
  sequence: 1,
  time: '2026-03-01T11:48:10.100Z',
  sourceTime: '2026-03-01T11:48:10.000Z',
  kind: 'transition',
  alarm: 'e7:AIR-1',
  unit: 'e7',
  entry: 'AIR-1',
  from: 'normal',
  to: 'unacknowledged',
  priority: 2,
  value: 0.001,
  limit: 0.0003,
  unit_of_measure: 'm3/s',
  where: 'Rack 4',
  actor: null,
  station: null,
  reason: 'conditionTrue',
  previousHash: '0',
  hash: '1',
};

describe('a line of the journal', () => {
  it('says what changed, where, and at what value with its unit', () => {
    expect(journalLine(row)).toBe('AIR-1 · Rack 4 · raised · 60.0\u00a0L/min free air');
  });

  it('says the priority that an alarm has by now, where nothing else of it changed', () => {
    expect(journalLine({ ...row, from: 'unacknowledged', priority: 1, cause: 'conditionTrue', value: null })).toBe(
      'AIR-1 · Rack 4 · told again, priority 1 by now',
    );
  });

  it('says of a standing alarm what it follows from by then', () => {
    const update: JournalRow = { ...row, kind: 'system', from: null, value: null, reason: 'standing alarm updated' };
    expect(journalActor({ ...update, foldedUnder: 'e7:PUMP-1' }, 'Etc/UTC')).toBe(
      'stands since 11:48:10, follows from e7:PUMP-1 by now',
    );
    expect(journalActor(update, 'Etc/UTC')).toBe('stands since 11:48:10, follows from no other by now');
    // Found when it was written; on the clock of a plant nothing is said of that.
    const found = { ...update, time: '2026-03-01T11:50:00.000Z' };
    expect(rowTime(found, true)).toBe(found.time);
    expect(rowTime(found, false)).toBe(found.sourceTime);
    expect(rowTime({ ...row, time: found.time }, true)).toBe(row.sourceTime);
  });

  it('leaves the value out of a yes or no', () => {
    const water = { ...row, entry: 'WATER-1', where: null, value: 1, limit: null, unit_of_measure: '1' };
    expect(journalLine(water)).toBe('WATER-1 · raised');
    expect(journalLine({ ...water, limit: 1 })).toBe('WATER-1 · raised');
    expect(journalLine({ ...water, value: 0.8, limit: 0.9 })).toBe('WATER-1 · raised · 0.80');
  });

  it('says when Ebbline itself started and ended, and how the run before ended', () => {
    const ofProgram = { ...row, kind: 'system', alarm: null, unit: null, entry: null, from: null, to: null } as const;
    const nothing = { priority: null, value: null, limit: null, unit_of_measure: null, where: null } as const;
    const started = { ...ofProgram, ...nothing, cause: 'programStarted', reason: 'Ebbline 1 started; …' };
    expect(journalLine(started)).toBe('Ebbline started');
    expect(journalActor(started, 'UTC')).toBe('Ebbline 1 started; …');
    expect(journalLine({ ...started, cause: 'programEnded' })).toBe('Ebbline ended');
  });

  it('names a test by its kind, and leads to its record', () => {
    const test = { ...row, entry: null, from: null, to: null, value: null, limit: null, unit_of_measure: null };
    const ofTightness = { ...test, alarm: 'tightness/e7-31', where: null, cause: 'tightnessStarted' };
    expect(journalLine(ofTightness)).toBe('pressure-rise test');
    expect(testOfRow(ofTightness)).toEqual({ name: 'tightness-record', params: { unit: 'e7', test: 'e7-31' } });
    const ofGuided = { ...ofTightness, alarm: 'guided/e7-9', cause: 'guidedEnded' };
    expect(journalLine(ofGuided)).toBe('guided test');
    expect(testOfRow(ofGuided)).toEqual({ name: 'guided-test', params: { unit: 'e7', test: 'e7-9' } });
    expect(testOfRow(row)).toBeNull();
    expect(testOfRow({ ...ofGuided, unit: null })).toBeNull();
  });

  it('says no more of a change that speaks for itself', () => {
    expect(journalActor(row, 'UTC')).toBeNull();
    expect(journalActor({ ...row, reason: 'conditionClear' }, 'UTC')).toBeNull();
    expect(journalActor({ ...row, reason: 'configuration' }, 'UTC')).toBe('the site file changed');
  });

  it('says every step between two states in words that no other step shares', () => {
    const steps: readonly (readonly [AlarmState, AlarmState])[] = [
      ['normal', 'unacknowledged'],
      ['acknowledged', 'unacknowledged'],
      ['unacknowledged', 'acknowledged'],
      ['unacknowledged', 'returnedUnacknowledged'],
      ['unacknowledged', 'latchedUnacknowledged'],
      ['latchedUnacknowledged', 'latchedAcknowledged'],
      ['acknowledged', 'normal'],
      ['returnedUnacknowledged', 'normal'],
      ['latchedAcknowledged', 'normal'],
    ];
    const said = steps.map(([from, to]) => journalLine({ ...row, from, to, where: null, value: null }));
    expect(new Set(said).size).toBe(steps.length);
    for (const line of said) expect(line).not.toMatch(/[a-z][A-Z]/);
  });

  it('says of a latched alarm when it was reset, and that it waited until then', () => {
    const reset = { ...row, from: 'latchedAcknowledged', to: 'normal', value: null, where: null } as const;
    expect(journalLine(reset)).toBe('AIR-1 · reset, ended');
    expect(journalLine({ ...reset, from: 'acknowledged', to: 'latchedAcknowledged' })).toBe(
      'AIR-1 · condition gone, latched',
    );
  });

  it('keeps a person’s comment in quotes even where it is a word of the program', () => {
    expect(journalActor({ ...row, actor: 'A. Example', reason: 'conditionTrue' }, 'UTC')).toBe(
      'A. Example: “conditionTrue”',
    );
  });

  it('names who acted and quotes what they wrote', () => {
    expect(journalActor({ ...row, actor: 'A. Example', reason: 'on my way' }, 'UTC')).toBe('A. Example: “on my way”');
    expect(journalActor({ ...row, actor: 'A. Example', reason: 'acknowledge' }, 'UTC')).toBe('A. Example');
  });

  it('tells of a permit in words, its end in the site’s zone', () => {
    const permit = {
      ...row,
      kind: 'action',
      alarm: 'permit/e7:1:1',
      entry: null,
      from: null,
      to: null,
      where: 'Rack 1',
      value: 0.0005,
      unit_of_measure: 'm3/s',
      actor: 'A. Example',
      reason: 'permit opened until 2026-03-01T13:00:00.000Z: hose 4',
    } as const;
    expect(journalLine(permit)).toBe('permit · Rack 1 · 30.0\u00a0L/min free air');
    expect(journalActor(permit, 'Europe/Oslo')).toBe('opened until 2026-03-01 14:00:00 · “hose 4” · A. Example');
    expect(journalActor({ ...permit, actor: null, reason: 'permit overdue' }, 'UTC')).toBe('overdue · the program');
  });

  it('says how an alarm was set aside and brought back, and no change of a state that stayed', () => {
    const of = (facts: NonNullable<JournalRow['facts']>, more: Partial<JournalRow> = {}): string =>
      journalLine({ ...row, where: null, value: null, from: 'normal', to: 'normal', ...more, facts });
    expect(of({ fromMode: 'inService', toMode: 'shelved' })).toBe('AIR-1 · shelved');
    expect(of({ fromMode: 'shelved', toMode: 'outOfService' })).toBe('AIR-1 · no longer shelved, taken out of service');
    expect(of({ fromMode: 'outOfService', toMode: 'inService' }, { to: 'unacknowledged' })).toBe(
      'AIR-1 · returned to service · raised',
    );
    expect(of({ toMode: 'inService' })).toBe('AIR-1');
    expect(of({ toMode: 'outOfService' }, { from: 'acknowledged' })).toBe(
      'AIR-1 · while out of service · condition gone, ended',
    );
    expect(journalActor({ ...row, reason: 'shelvingOver' }, 'UTC')).toBe('its time was over');
  });

  it('says what was done with people and access in words, and quotes nobody who said nothing', () => {
    const access = {
      ...row,
      kind: 'action',
      alarm: null,
      unit: null,
      entry: null,
      from: null,
      to: null,
      where: null,
      value: null,
      cause: 'signedIn',
      actor: 'Ada',
      reason: 'signed in by one click',
    } as const;
    expect(journalLine(access)).toBe('signed in');
    expect(journalActor(access, 'UTC')).toBe('Ada: signed in by one click');
    expect(journalLine({ ...access, entry: 'FIL-1', cause: 'settingChanged' })).toBe('FIL-1 · setting changed');
    expect(journalLine({ ...access, cause: 'floodBegan', actor: null })).toBe('a flood of alarms began');
  });
});
