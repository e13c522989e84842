import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { forgetLeftTopics, keepTopics } from '../../../../../backend/src/connections/alarm-publication/kept-topics';
import { LeftTopics } from '../../../../../backend/src/connections/alarm-publication/left-topics';
import { publicationPayload } from '../../../../../backend/src/connections/alarm-publication/publication-payload';
import type { RetainedHearer } from '../../../../../backend/src/ports/retained-topics';
import { stopAfterEach } from '../../../../helpers/stop-after';
import { temporaryFolder } from '../../../../helpers/temporary-folder';
import { alarmOf } from './told-alarm';

const keep = stopAfterEach();

describe('topics that alarms were told under before another prefix was set', () => {
  it('are cleared of what is in our own form and at its place, and of nothing else', async () => {
    const cleared: string[] = [];
    const left = new LeftTopics('old/plant/s/alarms/#', {
      start: (filter, hearer) => {
        expect(filter).toBe('old/plant/s/alarms/#');
        hearer.connected();
        const ours = publicationPayload('s', { alarm: alarmOf('m1:W'), setAside: null, change: null });
        hearer.held('old/plant/s/alarms/m1:W', ours);
        hearer.held('old/plant/s/alarms/m2:W', ours);
        hearer.held('old/plant/s/alarms/m3:W', 'a lamp is on');
        hearer.held('old/plant/s/alarms/m1:X', '');
        const foreign = publicationPayload('t', { alarm: alarmOf('m1:W'), setAside: null, change: null });
        hearer.held('old/plant/s/alarms/m1:W', foreign);
        hearer.asked?.();
      },
      put: (topic, payload) => {
        expect(payload).toBe('');
        cleared.push(topic);
        return Promise.resolve(true);
      },
      stop: () => Promise.resolve(),
    });
    left.start();
    expect(cleared).toEqual(['old/plant/s/alarms/m1:W']);
    expect(await left.stop()).toBe(true);
  });

  it('count as cleared once the broker said what it holds and confirmed each, in the connection that it has now', async () => {
    let broker: RetainedHearer | null = null;
    const confirmed: ((had: boolean) => void)[] = [];
    const topics = {
      start: (_: string, hearer: RetainedHearer) => void (broker = hearer),
      put: () => new Promise<boolean>((resolve) => confirmed.push(resolve)),
      stop: () => Promise.resolve(),
    };
    const hold = (hearer: RetainedHearer): void =>
      hearer.held('a/s/alarms/m1:W', publicationPayload('s', { alarm: alarmOf('m1:W'), setAside: null, change: null }));
    const run = async (course: (hearer: RetainedHearer) => void): Promise<boolean> => {
      confirmed.length = 0;
      const left = new LeftTopics('a/s/alarms/#', topics);
      left.start();
      course(broker ?? expect.fail('it was not started'));
      return left.stop();
    };
    expect(await run((hearer) => hearer.connected())).toBe(false);
    const answered = async (...had: boolean[]): Promise<boolean> =>
      run((hearer) => {
        for (const one of had) {
          hearer.connected();
          hold(hearer);
          hearer.asked?.();
          confirmed.at(-1)?.(one);
          hearer.lost();
        }
      });
    expect(await answered(true)).toBe(true);
    expect(await answered(false)).toBe(false);
    expect(await answered(false, true)).toBe(true);
    expect(await answered(true, false)).toBe(false);
    const lostBeforeTheAnswer = await run((hearer) => {
      hearer.connected();
      hearer.asked?.();
      hearer.lost();
      hearer.connected();
    });
    expect(lostBeforeTheAnswer).toBe(false);
  });

  it('are known from one run to the next until they are cleared, and come back into use as any other', async () => {
    const { path } = keep(await temporaryFolder());
    const file = () => readFileSync(join(path, 'alarm-topics'), 'utf8');
    expect(keepTopics(path, 'a/s/alarms/#').left).toEqual([]);
    expect(keepTopics(path, 'b/s/alarms/#').left).toEqual(['a/s/alarms/#']);
    expect(keepTopics(path, null).left).toEqual(['b/s/alarms/#', 'a/s/alarms/#']);
    expect(keepTopics(path, 'a/s/alarms/#').left).toEqual(['b/s/alarms/#']);
    forgetLeftTopics(path, 'a/s/alarms/#');
    expect(file()).toBe('a/s/alarms/#\n');
    expect(keepTopics(path, 'a/s/alarms/#').left).toEqual([]);
  });
});
