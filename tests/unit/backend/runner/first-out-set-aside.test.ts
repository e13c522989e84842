import { ManualClock } from '@ebbline/shared/clock/manual-clock';
import { describe, expect, it } from 'vitest';
import type { AlarmRecord, AlarmTransition } from '../../../../backend/src/evaluation/pipeline/outputs';
import type { AlarmJournal } from '../../../../backend/src/ports/alarm-journal';
import { OperatorActions } from '../../../../backend/src/runner/operator-actions';
import { RecordedAlarms } from '../../../../backend/src/runner/recorded-alarms';
import { RecordedChanges } from '../../../../backend/src/runner/recorded-changes';
import type { Scene } from '../../../../backend/src/runner/views/scene';
import { toCalling } from '../../../../backend/src/runner/views/to-calling';
import { settled } from '../evaluation/pipeline/settled-plant';

const texts = { title: '', cause: '', consequence: '', action: '', timeToRespondSeconds: 60 };
const ada = { name: 'Ada', station: 'desk' };

/** A unit whose margin is gone: the upper step of the pair stands, and folds the lower. */
function bench() {
  const plant = settled();
  plant.m1.pTank = 103;
  plant.run(60);
  const { pipeline } = plant;
  const kept = new Map<string, AlarmRecord>(pipeline.standing().map((record) => [record.alarm, record]));
  const journal = {
    standing: () => [...kept.values()],
    append: (_: readonly AlarmTransition[], records: readonly AlarmRecord[]) => {
      for (const record of records) kept.set(record.alarm, record);
      return [];
    },
  } as unknown as AlarmJournal;
  const alarms = new RecordedAlarms(journal, () => [...pipeline.standing(), ...pipeline.setAside()]);
  const scene = {
    pipeline,
    nowMs: () => plant.nowMs,
    textsOf: () => texts,
    alarms: () => alarms.list(),
  } as unknown as Scene;
  const operations = new OperatorActions(scene, alarms, new RecordedChanges(journal), new ManualClock(plant.nowMs));
  const calling = () => toCalling(scene)?.newest.map(({ id }) => id) ?? [];
  return { operations, alarms, kept, calling };
}

describe('a first-out that a person sets aside', () => {
  it('lets what folded under it call at once, shown and recorded so, though no other alarm changes', () => {
    const { operations, alarms, kept, calling } = bench();
    expect(calling()).not.toContain('m1:MARGIN-1');
    const shelved = operations.shelve('m1:MARGIN-2', { operator: 'Ada', reason: 'being seen to', minutes: 10 }, ada);
    expect(shelved).toMatchObject({ ok: true });
    expect(alarms.list().find(({ record }) => record.alarm === 'm1:MARGIN-1')?.record.foldedUnder).toBe(null);
    expect(kept.get('m1:MARGIN-1')?.foldedUnder).toBe(null);
    expect(calling()).toContain('m1:MARGIN-1');

    operations.unshelve('m1:MARGIN-2', { operator: 'Ada', comment: '' }, ada);
    expect(kept.get('m1:MARGIN-1')?.foldedUnder).toBe('m1:MARGIN-2');
    expect(calling()).not.toContain('m1:MARGIN-1');
  });
});
