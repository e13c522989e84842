import { guidedSurveySchema } from '@ebbline/shared/contract/guided-test';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { guidedExamples } from '../contract/http-examples-guided';
import { anAlarmsFrame, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
beforeEach(() => {
  localStorage.clear();
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] });
});
afterEach(() => {
  opened?.page.unmount();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('the pressure-rise test among those that are offered', () => {
  it('is not said to be possible while what is offered can’t be read anew', async () => {
    const one = guidedExamples['get /api/guided-tests'].reply.units[0];
    const [offer] = one.offers;
    const survey = guidedSurveySchema.parse({
      time: noon,
      units: [
        {
          ...one,
          unit: 'e7',
          open: null,
          offers: [{ ...offer, refusals: [] }],
          rise: { ...one.rise, refusals: [] },
        },
      ],
    });
    const answers: Record<string, unknown> = { '/api/guided-tests': survey };
    const server = new FakeServer();
    opened = await openPage(server, '/guided-tests', answers);
    const { page } = opened;
    server.connect();
    server.send(anAlarmsFrame([]));
    await flushPromises();
    const shown = (): string[] => page.findAll('.guided-offers b').map((each) => each.text());
    expect(shown()).toEqual(['can begin', 'can begin']);
    answers['/api/guided-tests'] = { reply: 'no survey' };
    await vi.advanceTimersByTimeAsync(5500);
    await flushPromises();
    expect(page.text()).toContain('What is offered can’t be read anew');
    expect(shown()).toEqual(['not known now', 'not known now']);
  });
});
