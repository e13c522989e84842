import { flushPromises } from '@vue/test-utils';
import type uPlot from 'uplot';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aListing, anEntry, aTrial } from './fixtures/alarm-management';
import { anAlarmsFrame, aSite, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';
import { aSession } from './fixtures/sessions';

// The chart library wants a canvas, which these tests have not. What it is given to draw is held.
const drawn: uPlot.Options[] = [];
vi.mock('uplot', () => ({
  default: class {
    readonly height = 1;
    constructor(options: uPlot.Options) {
      drawn.push(options);
    }
    setData(): void {
      return;
    }
    setSize(): void {
      return;
    }
    destroy(): void {
      return;
    }
  },
}));

let opened: Page | null = null;
beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] }));
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  vi.useRealTimers();
  drawn.length = 0;
});

const history = {
  unit: 'e7',
  point: 'vacuumMarginWorst',
  unit_of_measure: 'Pa',
  bucketMs: 3_600_000,
  resolution: 'minute',
  start: ['2026-02-23T08:00:00.000Z'],
  min: [3600],
  mean: [4200],
  max: [6000],
  count: [3600],
};
const answers = {
  '/api/alarm-list': aListing([anEntry('MARGIN-1')]),
  '/api/alarm-list/changes': { changes: [] },
  '/api/history': history,
  '/api/units/e7/limits': { unit: 'e7', limits: [] },
};
const running = aTrial({ state: 'running', progress: 0.4, secondsLeft: 75, live: null, proposed: null });
const cancelled = { ...running, state: 'cancelled' as const };

async function show(
  address: string,
  more: Record<string, unknown> = {},
  session = aSession('operator'),
): Promise<Page> {
  const server = new FakeServer();
  opened = await openPage(server, address, { ...answers, ...more }, aSite(), session);
  server.connect();
  server.send(anAlarmsFrame([]));
  await flushPromises();
  return opened;
}
const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim();
const press = async ({ page }: Page, name: string): Promise<void> => {
  const button = page.findAll('button').find((one) => plain(one.text()) === name);
  if (button === undefined) throw new Error(`no button named ${name}`);
  await button.trigger('click');
  await flushPromises();
};

describe('a limit trial', () => {
  it('is begun with the chosen units, period and values, and nothing else', async () => {
    const shown = await show('/limits/MARGIN-1?unit=e7', {
      '/api/limit-trials': running,
      '/api/limit-trials/t1': running,
    });
    const { page, asked, router } = shown;
    const form = page.get('form[aria-label="Limit trial of MARGIN-1"]');
    expect(form.text()).toContain('Change a value');
    await form.get('[name=limit]').setValue('4');
    expect(plain(form.text())).toContain('To be tried: limit 4 kPa.');
    await form.trigger('submit');
    await flushPromises();
    expect(asked.find(({ path }) => path === '/api/limit-trials')?.body).toEqual({
      entry: 'MARGIN-1',
      units: ['e7'],
      // A week up to now.
      from: '2026-02-22T12:00:00.000Z',
      to: noon,
      proposed: { limit: 4000 },
    });
    expect(router.currentRoute.value.query).toEqual({ unit: 'e7', trial: 't1' });
    expect(plain(page.get('[data-testid=trial-progress]').text())).toContain('40 %, about 75 s left');
  });

  it('is filled by an address that proposes values and a period', async () => {
    const { page } = await show(
      '/limits/MARGIN-1?unit=e7&propose=deadband:1500,onDelaySeconds:30&from=2026-02-01T00:00:00Z&to=2026-02-08T00:00:00Z',
    );
    const form = page.get('form[aria-label="Limit trial of MARGIN-1"]');
    const valueOf = (name: string) => (form.get(`[name=${name}]`).element as HTMLInputElement).value;
    expect([valueOf('limit'), valueOf('deadband'), valueOf('onDelaySeconds')]).toEqual(['5', '1.5', '30']);
    // Oslo is an hour ahead of UTC in winter.
    expect(valueOf('from')).toContain('2026-02-01T01:00');
    expect(plain(form.text())).toContain('To be tried: deadband 1.5 kPa, raised after 30 s.');
    expect(form.get('button[type=submit]').attributes('disabled')).toBeUndefined();
  });

  it('is looked at again and again until it has ended', async () => {
    let at = 0;
    const steps = [running, { ...running, progress: 0.8, secondsLeft: 20 }, aTrial()];
    const { page } = await show('/limits/MARGIN-1?trial=t1', {
      '/api/limit-trials/t1': () => steps[Math.min(at++, steps.length - 1)],
    });
    expect(page.get('progress').attributes('value')).toBe('0.4');
    await vi.advanceTimersByTimeAsync(1000);
    await flushPromises();
    expect(page.get('progress').attributes('value')).toBe('0.8');
    await vi.advanceTimersByTimeAsync(1000);
    await flushPromises();
    expect(page.find('progress').exists()).toBe(false);
    const before = at;
    await vi.advanceTimersByTimeAsync(5000);
    expect(at).toBe(before);
  });

  it('is cancelled once the server has said so', async () => {
    const shown = await show('/limits/MARGIN-1?trial=t1', {
      '/api/limit-trials/t1': running,
      '/api/limit-trials/t1/cancel': cancelled,
    });
    await press(shown, 'Cancel the trial');
    expect(plain(shown.page.get('[data-testid=trial-progress]').text())).toContain(
      'Cancelled, confirmed by the server.',
    );
  });

  it('answers with both settings side by side', async () => {
    const { page } = await show('/limits/MARGIN-1?trial=t1', { '/api/limit-trials/t1': aTrial() });
    const cell = (name: string) => plain(page.get(`[data-testid="${name}"]`).text());
    expect([cell('live-raised'), cell('proposed-raised')]).toEqual(['2', '1']);
    expect([cell('live-time in alarm'), cell('proposed-time in alarm')]).toEqual(['62 min', '50 min']);
    const result = plain(page.get('[data-testid=trial-result]').text());
    expect(page.findAll('.outcome-setting').map((row) => plain(row.text()))).toEqual(['limit5 kPa4 kPa']);
    expect(result).toContain('not recorded (0.1 %)');
  });

  it('draws the point with both limits, and what only one of the two told stands out', async () => {
    const { page } = await show('/limits/MARGIN-1?trial=t1', { '/api/limit-trials/t1': aTrial() });
    await vi.advanceTimersByTimeAsync(200);
    await vi.dynamicImportSettled();
    await flushPromises();
    expect(drawn.length).toBeGreaterThan(0);
    const spans = page.get('.trial-spans');
    // The short one of the 25th ran only; the long one of the 23rd overlaps in both.
    expect(spans.findAll('.span-alone')).toHaveLength(1);
    expect(spans.findAll('.span-both')).toHaveLength(2);
    expect(spans.get('svg').attributes('aria-label')).toContain('as it runs: 2 times');
    const link = page.findAll('a').find((one) => one.text() === 'Look on in Trends');
    expect(link?.attributes('href')).toContain('points=e7:vacuumMarginWorst');
    expect(link?.attributes('href')).toContain('from=2026-02-22T12:00:00.000Z');
  });

  it('lists the times in alarm of either, and draws the one that is pressed', async () => {
    const shown = await show('/limits/MARGIN-1?trial=t1', { '/api/limit-trials/t1': aTrial() });
    expect(shown.page.findAll('.episode-rows > li')).toHaveLength(1);
    await press(shown, 'as it runs: 2');
    expect(shown.page.findAll('.episode-rows > li')).toHaveLength(2);
    expect(plain(shown.page.get('.episode-rows').text())).toContain('worst 3.6 kPa against 5.0 kPa');
    await shown.page.findAll('.episode-look')[1]?.trigger('click');
    await flushPromises();
    // Two minutes of the 25th with two more on each side, in Oslo.
    expect(plain(shown.page.get('.trial-look').text())).toContain('2026-02-25 08:58:00 to 2026-02-25 09:04:00');
  });

  it('fills a change, which still wants a reason', async () => {
    const shown = await show('/limits/MARGIN-1?trial=t1', { '/api/limit-trials/t1': aTrial() }, aSession('engineer'));
    await press(shown, 'Use in a change…');
    const form = shown.page.get('form[aria-label="Change MARGIN-1"]');
    expect((form.get('[name=limit]').element as HTMLInputElement).value).toBe('4');
    expect(form.get('button[type=submit]').attributes('disabled')).toBeDefined();
    await form.get('[name=reason]').setValue('tried over a week');
    expect(form.get('button[type=submit]').attributes('disabled')).toBeUndefined();
  });

  it('is not begun by who may only look', async () => {
    const { page } = await show('/limits/MARGIN-1?propose=limit:4000', {}, aSession('viewer'));
    const form = page.get('form[aria-label="Limit trial of MARGIN-1"]');
    expect(form.get('button[type=submit]').attributes('disabled')).toBeDefined();
    expect(page.get('[data-testid=trial]').text()).toContain('not among what this role may do');
  });

  it('says why it failed, and what it can not know', async () => {
    const failed = aTrial({ state: 'failed', notes: ['history could not be read'], live: null, proposed: null });
    const { page } = await show('/limits/MARGIN-1?trial=t1', { '/api/limit-trials/t1': failed });
    expect(page.get('[data-testid=trial] [role=alert]').text()).toContain('history could not be read');
    page.unmount();
    const noted = await show('/limits/MARGIN-1?trial=t1', {
      '/api/limit-trials/t1': aTrial({ notes: ['permits of then are not known'] }),
    });
    expect(noted.page.get('.trial-notes').text()).toContain('permits of then are not known');
  });
});
