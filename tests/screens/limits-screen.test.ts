import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aChange, aListing } from './fixtures/alarm-management';
import { anAlarmsFrame, aSite, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import { air, limitsAnswers, margin } from './fixtures/limits-answers';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';
import { aSession } from './fixtures/sessions';

let opened: Page | null = null;
beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] }));
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

async function show(
  address: string,
  more: Record<string, unknown> = {},
  session = aSession('engineer'),
): Promise<Page> {
  const server = new FakeServer();
  opened = await openPage(server, address, { ...limitsAnswers, ...more }, aSite(), session);
  server.connect();
  server.send(anAlarmsFrame([]));
  await flushPromises();
  return opened;
}
const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim();
describe('the list of limits', () => {
  it('has every entry under its priority, with its limit, its times and whether it differs', async () => {
    const { page } = await show('/limits');
    expect(page.findAll('.limit-group').map((one) => plain(one.text()))).toEqual(['act now 1', 'act soon 1']);
    const row = plain(page.get('[data-testid=limit-MARGIN-1]').text());
    for (const part of ['Vacuum margin small', '5 kPa, after 10 s', '8 min to respond, 2 min for the first action'])
      expect(row).toContain(part);
    expect(row).toContain('differs from authorised');
    expect(page.get('[data-testid=limit-AIR-1]').text()).not.toContain('differs');
    expect(page.text()).toContain('approved by B. Example');
  });

  it('keeps to what is searched for, and says so in the address', async () => {
    const { page, router } = await show('/limits');
    await page.get('[name=search]').setValue('hose');
    await flushPromises();
    expect(router.currentRoute.value.query).toEqual({ search: 'hose' });
    expect(page.find('[data-testid=limit-MARGIN-1]').exists()).toBe(false);
    expect(page.find('[data-testid=limit-AIR-1]').exists()).toBe(true);
    await page.get('[name=differing]').setValue(true);
    await flushPromises();
    expect(router.currentRoute.value.query).toEqual({ search: 'hose', differing: 'true' });
    expect(page.text()).toContain('No entry fits.');
  });

  it('says who made what runs otherwise than authorised, when and why', async () => {
    const { page } = await show('/limits?differing=true');
    const audit = plain(page.get('.audit-findings').text());
    for (const part of [
      'MARGIN-1',
      'E7: limit',
      '4.5 kPa',
      'authorised 5 kPa',
      'A. Example',
      'the barometer has settled',
    ])
      expect(audit).toContain(part);
    expect(plain(page.get('.change-lines').text())).toContain('limit 5 kPa → 4.5 kPa');
  });

  it('can be taken along as a file', async () => {
    const { page } = await show('/limits');
    expect(page.findAll('.export-links a').map((one) => one.attributes('href'))).toEqual([
      '/api/alarm-list/export?format=csv',
      '/api/alarm-list/export?format=json',
    ]);
  });

  it('says so where nothing differs, where nothing was changed and where the server does not answer', async () => {
    const { page } = await show('/limits?differing=true', {
      '/api/alarm-list': aListing([air]),
      '/api/alarm-list/changes': { changes: [] },
      '/api/alarm-list/audit': { time: noon, compared: 60, findings: [], refused: [] },
    });
    for (const part of ['Everything runs as authorised.', 'Nothing was changed', 'all run as authorised'])
      expect(page.text()).toContain(part);
    page.unmount();
    const broken = await show('/limits', { '/api/alarm-list': { not: 'a list' } });
    expect(broken.page.get('[role=alert]').text()).toContain('can’t be read');
  });
});

describe('one entry', () => {
  it('says why it exists, in the words of the plants of this site', async () => {
    const { page } = await show('/limits/MARGIN-1?unit=e7');
    const text = plain(page.get('.reasons').text());
    for (const part of [
      'Lower the set pressure of the supply tank.',
      'Compare the supply tank pressure',
      'Supply tank regulator has moved.',
      'An opened line would let water out.',
      'The largest weather change',
      'class water',
      'cooling engineer',
      '2027-03-01',
    ])
      expect(text).toContain(part);
    expect(text).not.toContain('Slow the circulation pump.');
    expect(plain(page.get('.limit-entry header').text())).toContain('seen from E7');
  });

  it('marks its place in the grid of priorities in words', async () => {
    const { page } = await show('/limits/MARGIN-1');
    const here = page.findAll('.grid-here');
    expect(here).toHaveLength(1);
    expect(here[0]?.text()).toContain('this entry');
    expect(here[0]?.get('svg').attributes('aria-label')).toBe('priority 2, act soon');
  });

  it('shows what runs beside what was authorised, place by place', async () => {
    const { page } = await show('/limits/MARGIN-1');
    const limit = page.get('[data-testid="set-unit:e7"] .differs');
    expect(plain(limit.get('b').text())).toBe('≠ 4.5 kPa');
    expect(plain(limit.get('.settings-authorised').text())).toBe('authorised 5 kPa');
    expect(page.findAll('[data-testid="set-unit:e7"] .differs')).toHaveLength(1);
    expect(page.get('[data-testid="set-site"]').text()).not.toContain('authorised');
  });

  it('is not found under a name that the list does not have', async () => {
    const { page } = await show('/limits/NOTHING-1');
    expect(page.text()).toContain('has no entry of this name');
  });

  it('lists its own changes and no others', async () => {
    const { page } = await show('/limits/MARGIN-1', {
      '/api/alarm-list/changes': { changes: [aChange('c1'), aChange('c2', { entry: 'AIR-1', reason: 'another' })] },
    });
    const lines = page.get('[aria-labelledby=own-changes-title]').text();
    expect(lines).toContain('the barometer has settled');
    expect(lines).not.toContain('another');
  });
});

describe('changes that no longer fit', () => {
  it('are told with why, where the audit and where the changes stand', async () => {
    const left = aChange('c3', { refused: { code: 'SETTING_STEPS', message: 'At unit e7 the steps would cross.' } });
    const { page } = await show('/limits', {
      '/api/alarm-list/changes': { changes: [left] },
      '/api/alarm-list/audit': { time: noon, compared: 9, findings: [], refused: [left] },
    });
    expect(plain(page.get('[data-testid=refused-changes]').text())).toContain('At unit e7 the steps would cross.');
    expect(plain(page.get('.change-lines').text())).toContain('Not in force: At unit e7');
  });
});

describe('the share of alarms at priority 1', () => {
  it('is said of the catalogue and of what is configured at the site, held against the aim by the second', async () => {
    const shown = await show('/limits', {
      '/api/alarm-list': aListing([margin], { shareOfPriority1: 0.158, configured: { alarms: 500, priority1: 40 } }),
    });
    expect(plain(shown.page.get('.limit-list .said').text())).toContain(
      '15.8 % of the alarms of the catalogue are of priority 1, 8.0 % of the 500 that are configured at this site: a tenth at most is aimed at, as configured.',
    );
  });
});
