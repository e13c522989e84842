import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { stopAfterEach } from '../../helpers/stop-after';
import { intakeOn, type IntakeUnderTest } from './intake-bench';
import { scriptedBroker, type ScriptedBroker } from './scripted-broker';

const keep = stopAfterEach();
const minuteMs = 60_000;
/** A turn of the event loop; timers are driven by the test. */
const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

describe('a broker that refuses some of the topics', () => {
  let broker: ScriptedBroker;
  let under: IntakeUnderTest;

  beforeEach(async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    broker = keep(await scriptedBroker());
    broker.refused.add('hall/b').add('hall/c');
    under = keep(intakeOn(broker.url, { subscriptions: ['hall/a', 'hall/b', 'hall/c', 'hall/d'] }));
    await under.start();
  });
  afterEach(() => void vi.useRealTimers());

  const note = (): string | null => under.intake.state().note;
  async function askedAgain(times: number): Promise<void> {
    for (let i = 0; i < 5000 && broker.asked.length < times; i += 1) await turn();
    for (let i = 0; i < 200; i += 1) await turn();
  }

  it('is told of by how many it refuses, and by one of them', () => {
    expect(note()).toBe('the broker refused 2 of 4 subscriptions, such as hall/b; let this user read them');
  });

  it('is asked each minute for these alone, until it lets us hear all', async () => {
    broker.refused.delete('hall/b');
    await vi.advanceTimersByTimeAsync(minuteMs);
    await askedAgain(2);
    expect(broker.asked[1]).toEqual(['hall/b', 'hall/c']);
    expect(note()).toMatch(/refused 1 of 4 subscriptions, such as hall\/c/);
    broker.refused.clear();
    await vi.advanceTimersByTimeAsync(minuteMs);
    await askedAgain(3);
    expect(broker.asked[2]).toEqual(['hall/c']);
    expect(note()).toBeNull();
    await vi.advanceTimersByTimeAsync(3 * minuteMs);
    await askedAgain(3);
    expect(broker.asked).toHaveLength(3);
  });

  it('is asked again at once where other topics are wanted, and what is wanted no more is no trouble', async () => {
    broker.refused.delete('hall/b');
    await under.intake.follow(['hall/a', 'hall/b', 'hall/d', 'hall/e']);
    expect(broker.asked[1]).toEqual(['hall/b', 'hall/e']);
    expect(note()).toBeNull();
  });

  it('is not asked any more once the program has ended', async () => {
    const ended = under.stop();
    await askedAgain(1);
    await vi.advanceTimersByTimeAsync(3 * minuteMs);
    await ended;
    await askedAgain(1);
    expect(broker.asked).toHaveLength(1);
    expect(vi.getTimerCount()).toBe(0);
  });
});
