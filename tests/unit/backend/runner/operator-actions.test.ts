import { ManualClock } from '@ebbline/shared/clock/manual-clock';
import { describe, expect, it } from 'vitest';
import { createPipeline } from '../../../../backend/src/evaluation/pipeline/create-pipeline';
import type { AlarmRecord, AlarmTransition } from '../../../../backend/src/evaluation/pipeline/outputs';
import type { AlarmJournal } from '../../../../backend/src/ports/alarm-journal';
import { OperatorActions } from '../../../../backend/src/runner/operator-actions';
import { RecordedAlarms } from '../../../../backend/src/runner/recorded-alarms';
import { RecordedChanges } from '../../../../backend/src/runner/recorded-changes';
import type { Scene } from '../../../../backend/src/runner/views/scene';
import { smallSite } from '../../../helpers/small-site';

const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);
const standing: AlarmRecord = {
  alarm: 'm1:WATER-1',
  entry: 'WATER-1',
  unit: 'm1',
  hall: 'north',
  state: 'unacknowledged',
  active: true,
  priority: 1,
  sinceMs: startMs,
  stateSinceMs: startMs,
  value: 1,
  limit: null,
  unitOfMeasure: '1',
  where: null,
  foldedUnder: null,
  acknowledgedBy: null,
  acknowledgedAtMs: null,
};
const raised: AlarmTransition = {
  ...standing,
  from: 'normal',
  to: 'unacknowledged',
  cause: 'conditionTrue',
  atMs: startMs,
  actor: null,
  station: null,
  comment: null,
};
const texts = { title: '', cause: '', consequence: '', action: '', timeToRespondSeconds: 60 };

function bench(nowMs = startMs + 1000) {
  const disk = { full: false };
  const appended: AlarmTransition[] = [];
  const journal = {
    standing: () => [standing],
    append: (transitions: readonly AlarmTransition[]) => {
      if (disk.full) throw new Error('no space left');
      appended.push(...transitions);
    },
  } as unknown as AlarmJournal;
  const pipeline = createPipeline(smallSite(), { clock: 'wall', startMs });
  pipeline.restore([standing]);
  const alarms = new RecordedAlarms(journal, () => pipeline.standing());
  const scene = { pipeline, nowMs: () => nowMs, textsOf: () => texts } as unknown as Scene;
  const actions = new OperatorActions(scene, alarms, new RecordedChanges(journal), new ManualClock(startMs + 5000));
  const acknowledge = (name: string, alarm = standing.alarm) =>
    actions.acknowledge(alarm, { operator: name, comment: 'seen' }, { name, station: '127.0.0.1' });
  return { acknowledge, alarms, disk, appended, pipeline };
}

describe('an acknowledgement', () => {
  it('is confirmed by what the journal has committed, with name, station and comment', () => {
    const { acknowledge, appended } = bench();
    expect(acknowledge('Ines')).toMatchObject({
      ok: true,
      value: { id: 'm1:WATER-1', acknowledgedBy: 'Ines', acknowledgedAt: new Date(startMs + 1000).toISOString() },
    });
    expect(appended).toMatchObject([{ alarm: 'm1:WATER-1', actor: 'Ines', station: '127.0.0.1', comment: 'seen' }]);
  });

  it('is refused the second time, naming who was first and when', () => {
    const { acknowledge } = bench();
    acknowledge('Ines');
    expect(acknowledge('Otto')).toMatchObject({
      ok: false,
      fault: {
        code: 'ALARM_ALREADY_ACKNOWLEDGED',
        acknowledgedBy: 'Ines',
        acknowledgedAt: new Date(startMs + 1000).toISOString(),
      },
    });
  });

  it('is refused for an alarm that does not stand', () => {
    expect(bench().acknowledge('Ines', 'm1:NONE')).toMatchObject({ ok: false, fault: { code: 'ALARM_UNKNOWN' } });
  });

  it('that the journal refuses has no effect, then or later; a second try works', () => {
    const { acknowledge, alarms, disk, appended, pipeline } = bench();
    disk.full = true;
    expect(acknowledge('Ines')).toMatchObject({ ok: false, fault: { code: 'JOURNAL_UNAVAILABLE' } });
    expect(pipeline.standing()).toEqual([standing]);
    expect(alarms.list()).toEqual([{ record: standing, recorded: true }]);
    expect(alarms.waiting()).toBe(0);
    disk.full = false;
    expect(alarms.record([], startMs)).toBe(true);
    expect(appended).toEqual([]);
    expect(acknowledge('Otto')).toMatchObject({ ok: true, value: { acknowledgedBy: 'Otto' } });
    expect(appended.map(({ actor }) => actor)).toEqual(['Otto']);
    expect(alarms.list()).toMatchObject([{ recorded: true, record: { acknowledgedBy: 'Otto' } }]);
  });

  it('comes after the changes that wait for the journal, or not at all; those are kept', () => {
    const { acknowledge, alarms, disk, appended } = bench();
    disk.full = true;
    alarms.record([raised], startMs);
    expect(acknowledge('Ines')).toMatchObject({ ok: false, fault: { code: 'JOURNAL_UNAVAILABLE' } });
    expect(alarms.waiting()).toBe(1);
    disk.full = false;
    expect(acknowledge('Otto')).toMatchObject({ ok: true });
    expect(appended.map(({ cause, actor }) => [cause, actor])).toEqual([
      ['conditionTrue', null],
      ['acknowledge', 'Otto'],
    ]);
  });

  it('carries the machine’s time on a source clock that has not begun', () => {
    expect(bench(Number.NaN).acknowledge('Ines')).toMatchObject({
      ok: true,
      value: { acknowledgedAt: new Date(startMs + 5000).toISOString() },
    });
  });
});
