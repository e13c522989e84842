import { mostCallingListed } from '@ebbline/shared/contract/live-feed';
import { describe, expect, it } from 'vitest';
import type { AlarmRecord } from '../../../../../backend/src/evaluation/pipeline/outputs';
import type { Scene } from '../../../../../backend/src/runner/views/scene';
import { toCalling } from '../../../../../backend/src/runner/views/to-calling';

const record = (alarm: string, more: Partial<AlarmRecord> = {}): AlarmRecord =>
  ({
    ...{ alarm, unit: 'm1', priority: 2, state: 'unacknowledged', foldedUnder: null, where: null, stateSinceMs: 0 },
    ...more,
  }) as AlarmRecord;
const sceneOf = (records: readonly AlarmRecord[]): Scene =>
  ({
    alarms: () => records.map((one) => ({ record: one, recorded: true })),
    textsOf: ({ alarm }: AlarmRecord) => ({ title: `title of ${alarm}` }),
  }) as unknown as Scene;

describe('the alarms that call for a person', () => {
  it('are those that nobody has seen, and that stand under no other', () => {
    const calling = toCalling(
      sceneOf([
        record('seen', { state: 'acknowledged' }),
        record('gone', { state: 'returnedUnacknowledged' }),
        record('follows', { foldedUnder: 'a' }),
        record('a', { stateSinceMs: 1000 }),
        record('latched', { state: 'latchedUnacknowledged', stateSinceMs: 2000, priority: 1 }),
      ]),
    );
    expect(calling).toEqual({
      total: 2,
      newest: [
        {
          ...{ id: 'latched', unit: 'm1', title: 'title of latched', where: null, priority: 1 },
          since: '1970-01-01T00:00:02.000Z',
        },
        {
          ...{ id: 'a', unit: 'm1', title: 'title of a', where: null, priority: 2 },
          since: '1970-01-01T00:00:01.000Z',
        },
      ],
    });
  });

  it('are nothing where all is seen', () => {
    expect(toCalling(sceneOf([record('seen', { state: 'latchedAcknowledged' })]))).toBeNull();
  });

  it('are listed up to a bound, the newest first, and counted whole', () => {
    const calling = toCalling(
      sceneOf(Array.from({ length: mostCallingListed + 50 }, (_, i) => record(`a${i}`, { stateSinceMs: i }))),
    );
    expect(calling?.total).toBe(mostCallingListed + 50);
    expect(calling?.newest).toHaveLength(mostCallingListed);
    expect(calling?.newest[0]?.id).toBe(`a${mostCallingListed + 49}`);
  });

  it('keep what is most urgent among those listed, however many milder ones came after it', () => {
    const later = Array.from({ length: mostCallingListed }, (_, i) =>
      record(`a${i}`, { priority: 3, stateSinceMs: 1 + i }),
    );
    const calling = toCalling(sceneOf([record('urgent', { priority: 1 }), ...later]));
    expect(calling?.newest).toHaveLength(mostCallingListed);
    expect(calling?.newest[0]?.id).toBe(`a${mostCallingListed - 1}`);
    expect(calling?.newest.at(-1)).toMatchObject({ id: 'urgent', priority: 1 });
  });
});
