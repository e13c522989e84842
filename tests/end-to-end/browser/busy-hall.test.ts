import type { AlertList } from '@ebbline/shared/contract/alert';
import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { type Ebbline, startEbbline } from '../../helpers/ebbline';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { dataFolder } from '../data-folder';
import { axeViolations } from './axe-violations';
import { openPage } from './open-page';

const screens = [
  ['Hall', '/halls/north', '.hall-permits .permit'],
  ['Loop', '/units/N3', '[data-testid="alarm-N3:AIR-1"]'],
  ['Loop with two units', '/units/N8?open=tanks', '[data-testid="fact-loopWaterVolume"]'],
  ['Alarms', '/alarms', '.beside .alerts li'],
  ['Alarms set aside', '/alarms/set-aside', '#aside-shelved'],
  ['Journal of alarms', '/alarms/journal', '.journal-rows li'],
  ['Trends', '/trends', '[data-testid="key-N3:vacuumMargin"]'],
  ['Set-up', '/setup/N3', '[data-testid="active-cutServerHose-N3"]'],
] as const;

suiteNeeding(['chromium'], 'the screens of the demo, with a fault, an alarm, an alert and a permit', () => {
  const keep = stopAfterAll();
  let ebbline: Ebbline;
  beforeAll(async () => {
    const data = keep(await dataFolder());
    ebbline = keep(await startEbbline({ data: data.path }));
    await until(async () => (await ebbline.health()).status === 'ok', { everyMs: 100, what: 'health ok' });
    // A step is one from what was usual: the unit has to be known for some seconds.
    const clock = async (): Promise<number> => Date.parse((await ebbline.health()).clock.now ?? '');
    const begunMs = await clock();
    await until(async () => (await clock()) - begunMs > 20_000, { everyMs: 250, what: 'twenty seconds of the plant' });
    const command = { unit: 'N3', branch: null, action: 'start' };
    await accepted('/api/demo/faults', {
      ...command,
      id: 'cutServerHose',
      kind: 'fault',
      branch: 'r5',
      keys: { size: 'usual' },
    });
    const inAnHour = new Date(Date.now() + 3_600_000).toISOString();
    const permit = { unit: 'N2', branch: 'r4', until: inAnHour, expectedInLeak: 0.0003, operator: 'Ada Nightwatch' };
    await accepted('/api/permits', permit);
    await until(async () => (await ebbline.alarms()).some(({ id }) => id === 'N3:AIR-1'), {
      everyMs: 250,
      withinMs: 120_000,
      what: 'AIR-1',
    });
    // A set point is another only than one that was known: not before the unit has been heard.
    await accepted('/api/demo/faults', { ...command, id: 'setSeparator', kind: 'operation', keys: { value: '28' } });
    await until(async () => (await alerts()).some(({ id }) => id === 'N3:SET-1'), { everyMs: 250, what: 'SET-1' });
  });
  const alerts = async (): Promise<AlertList['alerts']> => (await ebbline.get<AlertList>('/api/alerts')).alerts;
  /** A busy machine may keep the simulator from answering in time: it is told again, and may have done it meanwhile. */
  async function accepted(path: string, body: unknown): Promise<void> {
    const told = async (): Promise<boolean> => {
      const reply = await ebbline.post(path, body);
      return reply.ok || (await reply.text()).includes('is active already');
    };
    await until(told, { everyMs: 500, withinMs: 60_000, what: path });
  }
  async function visit(page: Page, path: string, shown: string): Promise<void> {
    await page.goto(`${ebbline.url}${path}`);
    // On a phone what a part shows stands behind its heading.
    await page.locator(shown).first().waitFor({ state: 'attached' });
    // What is folded away is on the screen too, once somebody asks.
    await page.evaluate(() =>
      document
        .querySelectorAll('main details')
        .forEach((fold) => (fold as HTMLDetailsElement).setAttribute('open', '')),
    );
  }

  test.for([
    ['light', 1440],
    ['dark', 1440],
    ['light', 360],
  ] as const)(
    'have no violation that axe-core finds and need no scrolling sideways (%s, %i px)',
    async ([colorScheme, width]) => {
      const { page, troubles } = keep(await openPage(ebbline.url, { colorScheme }));
      await page.setViewportSize({ width, height: 900 });
      for (const [name, path, shown] of screens) {
        await visit(page, path, shown);
        expect(await axeViolations(page), `${name} ${colorScheme} ${width}`).toEqual([]);
        const sideways = await page.evaluate(() => {
          const { scrollWidth, clientWidth } = document.documentElement;
          return scrollWidth - clientWidth;
        });
        expect(sideways, `${name} at ${width} px`).toBeLessThanOrEqual(0);
      }
      expect(troubles).toEqual([]);
    },
  );

  test('show no number without its unit: every value of a loop, and its age beside it', async () => {
    const { page } = keep(await openPage(ebbline.url));
    for (const unit of ['N3', 'N6', 'N7', 'S6', 'S7']) {
      await visit(page, `/units/${unit}`, '[data-testid="point-vacuumMargin"]');
      const bare = await page.evaluate(() =>
        [...document.querySelectorAll('.fact, .points tbody tr[data-testid^=point-]')].flatMap((place) => {
          const value = place.querySelector('.quantity')?.textContent ?? '';
          const isWord = !/\d/.test(value);
          const hasUnit = /[\d.]\s*(?:±\s*[\d.]+\s*)?[^\d\s.±]/.test(value);
          const hasAge = place.querySelector('.age') !== null;
          return (isWord || hasUnit) && (hasAge || value === '') ? [] : [place.textContent ?? ''];
        }),
      );
      expect(bare, unit).toEqual([]);
      // "undefined" alone, or with its reason, is what a quotient of too small a difference is called; anywhere else it is a fault.
      const text = (await page.locator('main').innerText()).replaceAll(/(^|\t)undefined(: .*)?$/gm, '');
      expect(text, unit).not.toMatch(/undefined|NaN|\[object/);
    }
  });
});
