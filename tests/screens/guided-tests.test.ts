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
    expect(page.text()).toContain('No test is running.');
    const rise = page.get('[data-testid="rise-e7"]').text();
    expect(rise).toMatch(/rise of pressure\s+1 in the way.*water flows.*not decided/s);
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

describe('a guided test that could begin', () => {
  const asks = [
    { key: 'plate', title: 'Plate', kind: 'text', unit: '', least: null, most: null, usual: null },
    { key: 'meters', title: 'Meters by number', kind: 'text', unit: '', least: null, most: null, usual: null },
  ];
  const offered = (refusals: GuidedList['offers'][number]['refusals']): GuidedList => ({
    ...list,
    offers: list.offers.map((offer) => ({
      ...offer,
      refusals,
      asks: [{ ...asks[0], choices: [{ value: 'p1', name: 'Chip 1' }] }, { ...asks[1] }] as typeof offer.asks,
    })),
  });

  it('keeps what was typed where a gate closes meanwhile, says what is in the way, and sends nothing until it opens', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] });
    const answers: Record<string, unknown> = { [path]: offered([]) };
    const page = await open('/units/e7/guided-tests/zeroCheck', answers);
    const begin = () => page.get('[data-testid="guided-offer"] button[type="submit"]').attributes('disabled');
    await page.get('select[name="plate"]').setValue('p1');
    await page.get('input[name="meters"]').setValue('Power 4711');
    expect(begin()).toBeUndefined();
    answers[path] = offered([...(list.offers[0]?.refusals ?? [])]);
    await vi.advanceTimersByTimeAsync(2500);
    await flushPromises();
    expect(page.text()).toContain('It can’t begin now; what you typed stays');
    expect((page.get('input[name="meters"]').element as HTMLInputElement).value).toBe('Power 4711');
    expect(begin()).toBeDefined();
    answers[path] = offered([]);
    await vi.advanceTimersByTimeAsync(2500);
    await flushPromises();
    expect(begin()).toBeUndefined();
    vi.useRealTimers();
  });
});

describe('the record of a cold plate', () => {
  const curve = {
    across: { title: 'Flow', quantity: 'volumeFlow' },
    up: { title: 'Resistance, case to supply', quantity: 'thermalResistance' },
    law: 'R = R₀ + c · (Q ÷ 1 L/min)⁻ⁿ',
    said: 'Least squares through 2 points.',
    points: [
      { title: 'Point 1', across: 1e-5, acrossUncertainty: 2e-7, up: 0.042, upUncertainty: 0.001, above: 0.0004 },
      { title: 'Point 2', across: 3e-5, acrossUncertainty: 2e-7, up: 0.025, upUncertainty: 0.001, above: -0.0003 },
    ],
    line: [
      { across: 1e-5, up: 0.0416, uncertainty: 0.001 },
      { across: 3e-5, up: 0.0253, uncertainty: 0.001 },
    ],
    terms: [
      { symbol: 'R₀', title: 'fixed', quantity: 'thermalResistance', value: 0.012, expandedUncertainty: 0.0006 },
      { symbol: 'n', title: 'exponent', quantity: null, value: 0.6, expandedUncertainty: null },
    ],
  };

  it('draws points with bars and the curve with its band, and says terms and residuals in words and units', async () => {
    const record = guidedTestSchema.parse({ ...ended, result: { ...ended.result, curve } });
    const page = await open('/units/e7/guided-tests/t1', { [`${path}/t1`]: record });
    const figure = page.get('[data-testid="guided-curve"]');
    expect(figure.findAll('circle')).toHaveLength(2);
    expect(figure.get('polyline').attributes('points')?.split(' ')).toHaveLength(2);
    expect(figure.get('polygon').attributes('points')?.split(' ')).toHaveLength(4);
    expect(figure.text()).toMatch(/R₀, fixed\s*0\.0120 ± 0\.0006\s*K\/W/);
    expect(figure.text()).toMatch(/Point 1\s*0\.600 ± 0\.012\s*L\/min\s*0\.0420 ± 0\.0010\s*K\/W\s*\+0\.0004\s*K\/W/);
    expect(figure.text()).toMatch(/Point 2.*−0\.0003\s*K\/W/s);
    expect(figure.get('svg').attributes('aria-label')).toContain('2 points and the curve');
  });

  it('says in a test that was broken off how far its step came', async () => {
    const [first, second] = ended.steps;
    const record = {
      ...ended,
      verdict: null,
      result: null,
      endedFor: 'gateLost',
      steps: [first, { ...second, doneAt: null }],
    };
    const page = await open('/units/e7/guided-tests/t1', { [`${path}/t1`]: record });
    expect(page.get('[data-testid="step-zero"]').text()).toMatch(/broken off after 60\ss, 60 samples until then/);
    expect(page.get('[data-testid="step-zero"]').text()).toMatch(/single samples −0\.08/);
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
