import { demoCommandSchema } from '@ebbline/shared/contract/demo-faults';
import type { SetupPoint } from '@ebbline/shared/contract/setup';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aReading, aSite, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] }));
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const aSetupPoint = (id: string, arriving: SetupPoint['arriving'], more: Partial<SetupPoint> = {}): SetupPoint => ({
  reading: aReading(id, arriving === 'never' ? null : 35, 'Cel'),
  title: id,
  topic: `plant/e7/${id}`,
  path: ['supply', 't'],
  period: 5,
  arriving,
  ...more,
});
const intake = {
  messages: 1200,
  samples: 1100,
  late: 0,
  repeated: 0,
  retained: 0,
  topics: [],
  otherTopics: { messages: 0, refused: 0 },
  refusals: [
    {
      code: 'PAYLOAD_NOT_JSON',
      count: 3,
      example: { topic: 'plant/e7/x', message: 'the payload is no JSON', payloadStart: '{"a', time: noon },
    },
  ],
};
const siteState = { file: 'site.yaml', loadedAt: noon, contentHash: 'abcdef0123456789', refused: null, warnings: [] };
const demo = {
  running: true,
  units: [{ id: 'e7', branches: ['1'] }],
  kinds: [
    {
      id: 'cutServerHose',
      title: 'server hose cut',
      kind: 'fault',
      about: 'room air goes into the return',
      units: ['e7'],
      needsBranch: true,
      choices: [{ key: 'size', title: 'size', values: ['small', 'usual'], usual: 'usual' }],
    },
    {
      id: 'deepLow',
      title: 'deep low',
      kind: 'fault',
      about: 'weather',
      units: ['site'],
      needsBranch: false,
      choices: [],
    },
  ],
  active: [],
  refused: null,
};
const answers = {
  '/api/units/e7/setup': {
    unit: 'e7',
    time: noon,
    points: [aSetupPoint('supply.temperature', 'arriving'), aSetupPoint('return.temperature', 'never')],
  },
  '/api/intake': intake,
  '/api/site/state': siteState,
  '/api/demo/faults': demo,
};

async function show(more: Record<string, unknown> = {}, site = aSite()): Promise<Page> {
  opened = await openPage(new FakeServer(), '/setup/e7', { ...answers, ...more }, site);
  await flushPromises();
  return opened;
}
const press = async ({ page }: Page, name: string): Promise<void> => {
  const button = page.findAll('button').find((one) => one.text() === name);
  if (button === undefined) throw new Error(`no button named ${name}`);
  await button.trigger('click');
  await flushPromises();
};

describe('the points of a unit on the Setup screen', () => {
  it('are counted, and those that do not arrive are listed with why', async () => {
    const { page } = await show();
    expect(page.get('[data-testid=arrival-counts]').text()).toBe('1 of 2 points arrive, 1 never came');
    const row = page.get('[data-testid="arrival-return.temperature"]').text();
    for (const part of ['never came', 'no value', 'never received', '5\u00a0s', 'supply → t'])
      expect(row).toContain(part);
    expect(page.find('[data-testid="arrival-supply.temperature"]').exists()).toBe(false);
    await page.get('[name=all]').setValue(true);
    expect(page.get('[data-testid="arrival-supply.temperature"]').text()).toContain('35.0');
  });

  it('show the newest payload of their topic when asked, and why it was refused', async () => {
    const shown = await show({
      '/api/intake/last': {
        topic: 'plant/e7/return.temperature',
        receivedAt: noon,
        bytes: 9,
        text: '{"broken"',
        hex: null,
        cut: false,
        refusal: { code: 'PAYLOAD_NOT_JSON', message: 'the payload is no JSON' },
      },
    });
    expect(shown.asked.some(({ path }) => path.startsWith('/api/intake/last'))).toBe(false);
    await press(shown, 'plant/e7/return.temperature');
    const payload = shown.page.get('.raw-payload').text();
    for (const part of ['{"broken"', '9 bytes', 'Refused: the payload is no JSON']) expect(payload).toContain(part);
  });

  it('grow old where the server does not answer', async () => {
    const { page } = await show();
    await page.get('[name=all]').setValue(true);
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('no way')));
    await vi.advanceTimersByTimeAsync(3100);
    await flushPromises();
    expect(page.get('[role=alert]').text()).toContain('can’t be reached');
  });
});

describe('what was refused', () => {
  it('stands by reason, with count, topic and the beginning of the payload', async () => {
    const { page } = await show();
    const text = page.get('[data-testid=refusal-PAYLOAD_NOT_JSON]').text();
    for (const part of ['3 ×', 'the payload is no JSON', 'plant/e7/x', '{"a']) expect(text).toContain(part);
  });
});

describe('the site file', () => {
  it('says which is in force, and why a newer one was refused', async () => {
    const refused = { since: noon, faults: [{ line: 12, key: 'units.0.shape', message: 'must be a, b or c' }] };
    const { page } = await show({ '/api/site/state': { ...siteState, refused } });
    expect(page.text()).toContain('In force: site.yaml');
    const text = page.get('[data-testid=site-refused]').text();
    for (const part of ['line 12', 'units.0.shape', 'must be a, b or c', 'stays in force'])
      expect(text).toContain(part);
  });

  it('is checked by its text, and nothing comes into force by that', async () => {
    const faults = [{ line: 3, key: 'halls', message: 'is missing' }];
    const shown = await show({ '/api/site/check': { accepted: false, summary: null, faults, warnings: [] } });
    await shown.page.get('[name=site]').setValue('site: x');
    await shown.page.get('.site-check').trigger('submit');
    await flushPromises();
    expect(shown.asked.find(({ path }) => path === '/api/site/check')?.body).toEqual({ text: 'site: x' });
    expect(shown.page.get('[data-testid=site-check]').text()).toContain('It would be refused');
    expect(shown.page.get('[data-testid=site-check]').text()).toContain('line 3');
    expect(shown.asked.some(({ path }) => path === '/api/site/reload')).toBe(false);
  });

  it('is read again when asked, and says what came of it', async () => {
    const shown = await show({ '/api/site/reload': siteState });
    await press(shown, 'Read the site file again');
    expect(shown.page.text()).toContain('Read again and in force.');
  });
});

describe('the faults of the demo', () => {
  it('are offered on a demo site only', async () => {
    expect((await show()).page.text()).toContain('Faults of the demo');
    opened?.page.unmount();
    expect((await show({}, { ...aSite(), demo: false })).page.text()).not.toContain('Faults of the demo');
  });

  it('are started with unit, branch and keys; active is what the simulator said', async () => {
    const active = {
      id: 'cutServerHose',
      unit: 'e7',
      branch: '1',
      forSeconds: 2,
      repaired: false,
      strength: 1,
      keys: { size: 'usual' },
    };
    const reply = (_path: string, body: unknown) => (body === undefined ? demo : { ...demo, active: [active] });
    const shown = await show({ '/api/demo/faults': reply });
    expect(shown.page.text()).toContain('No fault and no operation is under way.');
    await shown.page.get('.fault-form').trigger('submit');
    await flushPromises();
    const sent = shown.asked.find(({ path, body }) => path === '/api/demo/faults' && body !== undefined)?.body;
    expect(demoCommandSchema.parse(sent)).toEqual({
      id: 'cutServerHose',
      kind: 'fault',
      unit: 'e7',
      branch: '1',
      action: 'start',
      keys: { size: 'usual' },
    });
    expect(shown.page.get('[data-testid=active-cutServerHose-e7]').text().replaceAll('\u00a0', ' ')).toContain(
      'E7, Rack 1 · active, begun 2 s ago · size usual',
    );
  });

  it('that concern no unit are found under the whole site', async () => {
    const { page } = await show();
    await page.get('.fault-form [name=unit]').setValue('site');
    expect(page.get('.fault-form [name=kind]').text()).toBe('deep low');
    expect(page.find('.fault-form [name=branch]').exists()).toBe(false);
  });

  it('that the simulator refused say so in its words', async () => {
    const refused = { command: 'cutServerHose', code: 'FAULT_BRANCH_UNKNOWN', message: 'there is no branch 9' };
    const { page } = await show({ '/api/demo/faults': { ...demo, refused } });
    expect(page.get('[data-testid=demo-refused]').text()).toContain('there is no branch 9');
  });

  it('say where nothing is heard of the simulator', async () => {
    const { page } = await show({ '/api/demo/faults': { ...demo, running: false } });
    expect(page.text()).toContain('Nothing was heard of the simulator.');
    expect(page.find('.fault-form').exists()).toBe(false);
  });
});
