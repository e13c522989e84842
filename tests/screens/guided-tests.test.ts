import type { GuidedList, GuidedTest } from '@ebbline/shared/contract/guided-test';
import { guidedListSchema, guidedSurveySchema, guidedTestSchema } from '@ebbline/shared/contract/guided-test';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { guidedExamples } from '../contract/http-examples-guided';
import { anAlarmsFrame, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
beforeEach(() => localStorage.clear());
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

const path = '/api/units/e7/guided-tests';
const running: GuidedTest = guidedTestSchema.parse({
  ...guidedExamples['post /api/units/{unit}/guided-tests'].reply,
  id: 't1',
  unit: 'e7',
});
const ended: GuidedTest = guidedTestSchema.parse({
  ...guidedExamples['get /api/units/{unit}/guided-tests/{id}'].reply,
  id: 't1',
  unit: 'e7',
});
const list: GuidedList = guidedListSchema.parse({
  ...guidedExamples['get /api/units/{unit}/guided-tests'].reply,
  unit: 'e7',
});
const open = async (at: string, answers: Record<string, unknown>) => {
  const server = new FakeServer();
  opened = await openPage(server, at, answers);
  server.connect();
  server.send(anAlarmsFrame([]));
  await flushPromises();
  return opened.page;
};

describe('the list of guided tests', () => {
  it('tells of each unit what can begin, what is in the way, what goes on and what came of the last', async () => {
    const one = guidedExamples['get /api/guided-tests'].reply.units[0];
    const survey = guidedSurveySchema.parse({ time: noon, units: [{ ...one, unit: 'e7', open: null }] });
    const page = await open('/guided-tests', { '/api/guided-tests': survey });
    const shown = page.get('[data-testid="guided-survey"]').text();
    expect(shown).toContain('1 in the way');
    expect(shown).toContain('not “vented”');
    expect(shown).toMatch(/last:.*passes/s);
    expect(page.text()).toContain('No test goes on.');
  });
});

describe('a guided test that is offered', () => {
  it('shows its cautions and steps before anything, and what is in the way in place of a button', async () => {
    const page = await open('/units/e7/guided-tests/zeroCheck', { [path]: list });
    const shown = page.get('[data-testid="guided-offer"]').text();
    expect(shown.indexOf('Eye protection on.')).toBeLessThan(shown.indexOf('It can’t begin now'));
    expect(shown).toContain('not “vented”');
    expect(page.find('form').exists()).toBe(false);
  });
});

describe('a guided test that goes on', () => {
  it('draws how steady each reading is, with its drift, what is allowed and how long it takes yet', async () => {
    const page = await open('/units/e7/guided-tests/t1', { [`${path}/t1`]: running });
    const live = page.get('[data-testid="guided-live"]');
    expect(live.text()).toMatch(/41\ss measured, 40 samples; at least 19\ss more/);
    expect(live.text()).toMatch(/not steady yet: drift: too few means yet, allowed ± 0\.10\s*kPa/);
    expect(live.find('polyline').attributes('points')?.split(' ')).toHaveLength(3);
    expect(page.get('[aria-current="step"]').text()).toContain('Every pressure beside barometer');
  });

  it('shows as ended only what the server answers, with each figure, its interval, its limits and where its uncertainty is from', async () => {
    const page = await open('/units/e7/guided-tests/t1', { [`${path}/t1`]: ended });
    const result = page.get('[data-testid="guided-result"]').text();
    expect(result).toMatch(/Separator\s*passes/);
    expect(result).toMatch(/0\.02 ± 0\.12\s*kPa/);
    expect(result).toMatch(/limit −0\.40\s*kPa to 0\.40\s*kPa; k =\s*2\.00 for 95\.45 %; standard uncertainty by/);
    expect(page.text()).toContain('Supply main: not judged');
    expect(page.text()).toContain('Record t1');
    expect(page.find('form').exists()).toBe(false);
  });
});
