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
const nothingHeard = {
  ...{ time: noon, listening: null, messages: 0, notLookedAt: 0, leftOut: 0, mapped: 2, places: [] },
};
const listening = { filter: 'works/#', by: 'Ines', since: noon, until: noon, over: false, trouble: null };
const proposal = {
  ...{ kind: 'unit', holder: 'e7', point: 'loop.flow', title: 'Loop flow', grade: 'likely' },
  reasons: [
    { speaks: 'for', text: 'its name speaks of flow' },
    { speaks: 'against', text: 'x fits it better' },
  ],
  line: "loop.flow: { topic: 'works/e7', path: ['FT'], unit: 'L/min' }",
  needs: ['hose: on which hose the meter sits'],
};
const heard = {
  ...{ ...nothingHeard, listening, messages: 40 },
  places: [
    { topic: 'works/e7', path: ['FT'], count: 20, latest: '341', seen: '330 to 350', proposals: [proposal] },
    { topic: 'works/e7', path: ['serial'], count: 20, latest: '88213', seen: '88213', proposals: [] },
  ],
};
const answers = {
  '/api/units/e7/setup': {
    unit: 'e7',
    time: noon,
    points: [aSetupPoint('supply.temperature', 'arriving'), aSetupPoint('return.temperature', 'never')],
    notWatched: [],
  },
  '/api/intake': intake,
  '/api/site/state': siteState,
  '/api/demo/faults': demo,
  '/api/mapping': nothingHeard,
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

describe('names that are not of this site', () => {
  const lines =
    "units:\n  e7:\n    points:\n      # put in – hose: on which hose the meter sits\n      loop.flow: { topic: 'works/e7', path: ['FT'], unit: 'L/min' }\n";

  it('are listened to when asked, and proposed as points with reasons for and against', async () => {
    const shown = await show({ '/api/mapping/listen': heard });
    await shown.page.get('[name=filter]').setValue(' works/# ');
    await press(shown, 'Listen');
    expect(shown.asked.find(({ path }) => path === '/api/mapping/listen')?.body).toEqual({ filter: 'works/#' });
    const place = shown.page.get('[data-testid="heard-works/e7 → FT"]').text();
    for (const part of ['330 to 350', 'its name speaks of flow', 'Against: x fits it better', 'hose: on which hose'])
      expect(place).toContain(part);
    expect(shown.page.text()).toContain('1 place that nothing speaks for');
    expect((shown.page.get('[name=lines]').element as HTMLTextAreaElement).value).toBe(lines);
  });

  it('have no line where they are left out, and keep what was typed over the lines', async () => {
    const shown = await show({ '/api/mapping': heard });
    const box = () => (shown.page.get('[name=lines]').element as HTMLTextAreaElement).value;
    await shown.page.get('.heard-place select').setValue('');
    expect(box()).toBe('');
    await shown.page.get('[name=lines]').setValue('units: {}');
    await shown.page.get('.heard-place select').setValue('unit e7 loop.flow');
    expect(box()).toBe('units: {}');
    await press(shown, 'As chosen again');
    expect(box()).toBe(lines);
  });

  it('are tried with the site file, and nothing comes into force by that', async () => {
    const faults = [{ line: 5, key: 'units.e7.points.loop.flow.hose', message: 'is missing' }];
    const check = { accepted: false, summary: null, faults, warnings: [] };
    const shown = await show({ '/api/mapping': heard, '/api/mapping/try': { text: null, check } });
    await press(shown, 'Check with the site file');
    expect(shown.asked.find(({ path }) => path === '/api/mapping/try')?.body).toEqual({ lines });
    const said = shown.page.get('[data-testid=mapping-check]').text();
    for (const part of ['It would be refused', 'loop.flow.hose', 'is missing']) expect(said).toContain(part);
    expect(said).not.toContain('Download the whole site file');
    expect(shown.asked.some(({ path }) => path === '/api/site/reload')).toBe(false);
  });

  it('that can not be heard say why, and what was heard stays once it is over', async () => {
    const trouble = 'the connection to the broker was lost';
    const shown = await show({ '/api/mapping': { ...heard, listening: { ...listening, trouble } } });
    expect(shown.page.get('[data-testid=mapping] [role=alert]').text()).toContain(trouble);
    shown.page.unmount();
    const later = await show({ '/api/mapping': { ...heard, listening: { ...listening, over: true } } });
    expect(later.page.get('[data-testid=listening]').text()).toContain('it is over');
    expect(later.page.find('[data-testid="heard-works/e7 → FT"]').exists()).toBe(true);
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
