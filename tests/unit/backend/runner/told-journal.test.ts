import type { Alarm } from '@ebbline/shared/contract/alarm';
import { describe, expect, it } from 'vitest';
import type { AlarmRecord, AlarmTransition } from '../../../../backend/src/evaluation/pipeline/outputs';
import type { AlarmJournal } from '../../../../backend/src/ports/alarm-journal';
import { noticeToAll, type AlarmNews } from '../../../../backend/src/ports/notice';
import { toldJournal } from '../../../../backend/src/runner/told-journal';

const transition = (alarm: string, to: AlarmRecord['state'], more: Partial<AlarmTransition> = {}): AlarmTransition => ({
  ...{ alarm, entry: 'WATER-1', unit: 'm1', hall: 'north', from: 'normal', to, cause: 'conditionTrue', priority: 1 },
  ...{ atMs: 1000, sinceMs: 500, value: null, limit: null, unitOfMeasure: null, where: null, foldedUnder: null },
  ...{ actor: null, station: null, comment: null },
  ...more,
});
const record = (alarm: string, state: AlarmRecord['state'], foldedUnder: string | null = null): AlarmRecord =>
  ({ alarm, state, foldedUnder, acknowledgedBy: 'Ines' }) as unknown as AlarmRecord;

function bench() {
  const told: AlarmNews[] = [];
  const disk = { full: false };
  const journal = {
    standing: () => [],
    append: () => {
      if (disk.full) throw new Error('no space left');
      return [];
    },
  } as unknown as AlarmJournal;
  const inWords = (
    { record: one, recorded }: { record: AlarmRecord; recorded: boolean },
    change: AlarmNews['change'],
  ): AlarmNews => ({ alarm: { ...one, id: one.alarm, recorded } as unknown as Alarm, setAside: null, change });
  const notice = { tell: (news: readonly AlarmNews[]) => void told.push(...news) };
  const says = () =>
    told.map(({ alarm, change }) => `${alarm.id} ${alarm.state} ${String(alarm.recorded)} ${change?.cause ?? '–'}`);
  return { told, disk, says, journal: toldJournal(journal, noticeToAll([notice]), inWords) };
}

describe('a journal that tells', () => {
  it('tells each change once it has it, in order, and what folds under it', () => {
    const { journal, says, told } = bench();
    journal.append(
      [transition('a', 'unacknowledged'), transition('b', 'unacknowledged'), transition('b', 'normal')],
      [record('a', 'unacknowledged'), record('c', 'unacknowledged', 'a')],
      0,
    );
    expect(says()).toEqual([
      'a unacknowledged true conditionTrue',
      'b unacknowledged true conditionTrue',
      'b normal true conditionTrue',
      'c unacknowledged true –',
    ]);
    expect(told[0]?.change).toEqual({
      from: 'normal',
      cause: 'conditionTrue',
      at: '1970-01-01T00:00:01.000Z',
      by: null,
    });
    expect(told[0]?.alarm.acknowledgedBy).toBe('Ines');
  });

  it('tells what the disk refuses as not recorded, once, and again when it has it', () => {
    const { journal, says, disk } = bench();
    disk.full = true;
    const waiting = [transition('a', 'unacknowledged')];
    const refused = () => journal.append(waiting, [], 0);
    expect(refused).toThrow('no space left');
    expect(refused).toThrow('no space left');
    expect(says()).toEqual(['a unacknowledged false conditionTrue']);
    disk.full = false;
    refused();
    expect(says()).toEqual(['a unacknowledged false conditionTrue', 'a unacknowledged true conditionTrue']);
  });

  it('tells nobody of what a person could not do', () => {
    const { journal, says, disk } = bench();
    disk.full = true;
    const act = () => journal.append([transition('a', 'acknowledged', { cause: 'acknowledge', actor: 'Ines' })], [], 0);
    expect(act).toThrow('no space left');
    expect(says()).toEqual([]);
    disk.full = false;
    act();
    expect(says()).toEqual(['a acknowledged true acknowledge']);
  });

  it('is the same journal in everything else', () => {
    expect(bench().journal.standing()).toEqual([]);
  });
});
