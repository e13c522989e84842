import type { Alarm } from '@ebbline/shared/contract/alarm';
import { mount } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import AnnounceAlarms from '../../frontend/src/components/AnnounceAlarms.vue';
import { anAlarm } from './fixtures/builders';

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
});
afterEach(() => {
  vi.useRealTimers();
});

const raised = (minute: number): Alarm =>
  anAlarm('a', { title: 'Flow lost', stateSince: `2026-03-01T12:0${minute}:00.000Z` });
const sentence = 'New alarm, act soon: Flow lost';

/** What is told, each time that it changes: a listener hears nothing else. */
function listen() {
  const shown = mount(AnnounceAlarms, { props: { alarms: [], nameOf: ({ title }: Alarm) => title } });
  const heard: string[] = [];
  const pass = async (ms: number): Promise<void> => {
    for (let at = 0; at < ms; at += 100) {
      await vi.advanceTimersByTimeAsync(100);
      if (shown.text() !== heard.at(-1)) heard.push(shown.text());
    }
  };
  const frame = (...alarms: Alarm[]) => shown.setProps({ alarms });
  return { heard, pass, frame };
}

describe('an alarm that is raised again', () => {
  it('is told again in the same words, as the sentence before is taken away once all is said', async () => {
    const { heard, pass, frame } = listen();
    await frame(raised(1));
    await pass(10_000);
    await frame();
    await frame(raised(2));
    await pass(1_000);
    expect(heard).toEqual([sentence, '', sentence]);
  });

  it('is told again too where the sentence before still stands', async () => {
    const { heard, pass, frame } = listen();
    await frame(raised(1));
    await pass(3_000);
    await frame();
    await frame(raised(2));
    await pass(6_000);
    expect(heard).toEqual([sentence, '', sentence]);
  });
});
