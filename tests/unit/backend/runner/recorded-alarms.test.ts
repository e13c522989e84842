import { describe, expect, it } from 'vitest';
import type { AlarmRecord, AlarmTransition } from '../../../../backend/src/evaluation/pipeline/outputs';
import type { AlarmJournal } from '../../../../backend/src/ports/alarm-journal';
import { RecordedAlarms } from '../../../../backend/src/runner/recorded-alarms';

const record = (alarm: string, state: AlarmRecord['state'] = 'unacknowledged') =>
  ({ alarm, state, priority: 1, sinceMs: 0, foldedUnder: null }) as unknown as AlarmRecord;
const transition = (alarm: string, to: AlarmRecord['state'] = 'unacknowledged') =>
  ({ alarm, to }) as unknown as AlarmTransition;

/** A journal whose disk the test can fill, and the alarms that the judge holds. */
function bench() {
  const appended: string[] = [];
  const disk = { full: false };
  const standing = new Map<string, AlarmRecord>();
  const journal = {
    standing: () => [record('old')],
    append: (transitions: readonly AlarmTransition[], records: readonly AlarmRecord[]) => {
      if (disk.full) throw new Error('no space left');
      appended.push(
        transitions.map(({ alarm, to }) => `${alarm}→${to}`).join(' ') +
          ` | ${records.map(({ alarm }) => alarm).join(' ')}`,
      );
      return [];
    },
  } as unknown as AlarmJournal;
  const alarms = new RecordedAlarms(journal, () => [...standing.values()]);
  const shown = () =>
    alarms
      .list()
      .map(({ record: { alarm, state }, recorded }) => `${alarm} ${state}${recorded ? '' : ' not recorded'}`);
  return { alarms, appended, disk, standing, shown };
}

describe('alarms as they are shown', () => {
  it('are those of the journal at the start', () => {
    expect(bench().shown()).toEqual(['old unacknowledged']);
  });

  it('change with the commit, which has the record of every alarm that still stands', () => {
    const { alarms, standing, shown, appended } = bench();
    standing.set('a', record('a'));
    standing.set('other', record('other'));
    const before = alarms.version();
    expect(alarms.record([transition('a'), transition('old', 'normal')], 0)).toBe(true);
    expect(appended).toEqual(['a→unacknowledged old→normal | a']);
    expect(shown()).toEqual(['a unacknowledged']);
    expect(alarms.version()).toBeGreaterThan(before);
  });

  it('are marked as not recorded while the journal refuses, and are tried again in order', () => {
    const { alarms, disk, standing, shown, appended } = bench();
    disk.full = true;
    standing.set('a', record('a'));
    expect(alarms.record([transition('a')], 0)).toBe(false);
    standing.set('b', record('b'));
    expect(alarms.record([transition('b')], 0)).toBe(false);
    expect(shown()).toEqual(['old unacknowledged', 'a unacknowledged not recorded', 'b unacknowledged not recorded']);
    expect(alarms.waiting()).toBe(2);

    disk.full = false;
    expect(alarms.record([], 0)).toBe(true);
    expect(appended).toEqual(['a→unacknowledged b→unacknowledged | a b']);
    expect(shown()).toEqual(['old unacknowledged', 'a unacknowledged', 'b unacknowledged']);
    expect(alarms.waiting()).toBe(0);
  });

  it('that ended while the journal refuses are shown until that is recorded', () => {
    const { alarms, disk, standing, shown } = bench();
    standing.set('old', record('old'));
    disk.full = true;
    standing.delete('old');
    alarms.record([transition('old', 'normal')], 0);
    expect(shown()).toEqual(['old unacknowledged not recorded']);
    disk.full = false;
    alarms.record([], 0);
    expect(shown()).toEqual([]);
  });

  it('follow where the clock was set back over a restart, so that the next one reckons from its times', () => {
    const { alarms, standing, appended } = bench();
    standing.set('old', { ...record('old'), stateSinceMs: 5000 });
    alarms.follow(0);
    expect(appended).toEqual([' | old']);
    alarms.follow(0);
    expect(appended).toHaveLength(1);
  });

  it('follow when one folds under another, or comes out again, without a change of its own', () => {
    const { alarms, disk, standing, appended } = bench();
    const folds = () => alarms.list().map(({ record: { alarm, foldedUnder } }) => `${alarm} under ${foldedUnder}`);
    standing.set('old', { ...record('old'), foldedUnder: 'first' });
    standing.set('first', record('first'));
    alarms.record([transition('first')], 0);
    expect(folds()).toEqual(['old under first', 'first under null']);
    expect(appended).toEqual(['first→unacknowledged | old first']);

    standing.set('old', record('old'));
    standing.set('first', record('first', 'returnedUnacknowledged'));
    disk.full = true;
    alarms.record([transition('first', 'returnedUnacknowledged')], 0);
    disk.full = false;
    alarms.record([], 0);
    expect(folds().sort()).toEqual(['first under null', 'old under null']);
    expect(appended.at(-1)).toBe('first→returnedUnacknowledged | old first');
  });

  it('follow a fold that came with no change of any alarm, once the journal takes it', () => {
    const { alarms, disk, standing, appended } = bench();
    const parent = () => alarms.list().find(({ record: { alarm } }) => alarm === 'old')?.record.foldedUnder;
    standing.set('old', { ...record('old'), foldedUnder: 'first' });
    disk.full = true;
    alarms.follow(0);
    expect(parent()).toBe(null);
    disk.full = false;
    const before = alarms.version();
    alarms.follow(0);
    expect(parent()).toBe('first');
    expect(appended).toEqual([' | old']);
    expect(alarms.version()).toBeGreaterThan(before);
    alarms.follow(0);
    expect(appended).toHaveLength(1);
  });
});
