import type { TightnessTest } from '@ebbline/shared/contract/tightness-test';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { axeViolations } from './axe-violations';
import { faultsOfLayout, faultsOnScreen } from './look-over';
import { openPage } from './open-page';
import { faultsWhereLost } from './old-screens';
import { routesWithoutAddress, type ScreenAddress, screenAddresses } from './screen-addresses';
import { type SmallHall, startSmallHall } from './small-hall';
import { faultsByTab } from './walk-by-tab';

/** Phone, usual screen, wall. */
const widths = [360, 1440, 3840] as const;
/** That nothing was recorded is an answer of the server too, and the browser tells it as a fault. */
const notAnAnswer = (trouble: string): boolean =>
  !/404 \(Not Found\) \S+\/(past\/|tightness-tests\/none)/.test(trouble);
/** A pressure-rise test of a dry loop of one cubic metre, its source shut off. */
const tightness = { plannedMinutes: 30, acceptanceLimit: 1 / 60_000, dry: true, sourceIsolated: true, gasVolume: 1 };

describe('the rows of addresses', () => {
  test('take every route of the program', async () => {
    expect(await routesWithoutAddress(screenAddresses('any'))).toEqual([]);
  });

  test('are found too few by a route that is new', async () => {
    const planted = "{ path: '/new', name: 'new-screen', component: () => import('./new.vue') }, { name: 'hall' }";
    expect(await routesWithoutAddress(screenAddresses('any'), planted)).toEqual(['new-screen']);
  });
});

suiteNeeding(['chromium'], 'every address', () => {
  const keep = stopAfterAll();
  let hall: SmallHall;
  let rows: readonly ScreenAddress[] = [];
  beforeAll(async () => {
    hall = keep(await startSmallHall({ silent: true }));
    rows = screenAddresses('none');
  });

  /** Goes to an address and waits until it shows what it shows, with the first frame of the live feed in its head. */
  async function visit(page: Page, { route, path, shown }: ScreenAddress): Promise<void> {
    await page.goto(`${hall.ebbline.url}${path}`);
    await page.locator(shown).first().waitFor();
    if (route !== 'at-unit') await page.locator('.places-nav a').first().waitFor();
    // What calls comes with it, and with that the button that silences.
    if (!['sign-in', 'set-up'].includes(route)) await page.locator('.truth').getByTestId('clock').waitFor();
  }

  test('says in words that nothing came, where no unit ever sent anything, and shows no value as fresh', async () => {
    const { page, troubles } = keep(await openPage(hall.ebbline.url));
    const faults: string[] = [];
    for (const { route, path, silent } of rows) {
      await page.goto(`${hall.ebbline.url}${path}`);
      const main = page.locator('main');
      await main.locator('h1').first().waitFor();
      if (silent !== null)
        await until(async () => silent.test(await main.innerText()), { everyMs: 50 }).catch(async () =>
          faults.push(`${path}: nothing says ${silent.source}, but ${await main.innerText()}`),
        );
      faults.push(...(await faultsOnScreen(page)).map((fault) => `${path}: ${fault}`));
      // An age in figures would be one of something that came; the signs are shown by made-up ones.
      const ages = await main.locator('.age:not(.age-old)').allInnerTexts();
      if (route !== 'signs')
        faults.push(...ages.filter((age) => /\d/.test(age)).map((age) => `${path}: an age of ${age}`));
    }
    expect(faults).toEqual([]);
    expect(troubles.filter(notAnAnswer)).toEqual([]);
  }, 600_000);

  test('has, with an alarm standing, no fault that axe-core finds, fits each width, and is gone through by keyboard, in both themes', async () => {
    hall.begin();
    hall.change({ leak: 'wet' });
    await until(async () => (await hall.ebbline.alarms()).some(({ entry }) => entry === 'WATER-1'), {
      everyMs: 100,
      what: 'WATER-1',
    });
    const reply = await hall.ebbline.post('/api/units/m1/tightness-tests', { ...tightness, operator: 'Ines' });
    rows = screenAddresses(((await reply.json()) as Partial<TightnessTest>).id ?? `refused: ${reply.status}`);
    const faults: string[] = [];
    for (const colorScheme of ['light', 'dark'] as const) {
      const { page, troubles } = keep(await openPage(hall.ebbline.url, { colorScheme }));
      for (const row of rows) {
        await page.setViewportSize({ width: colorScheme === 'light' ? 360 : 1440, height: 900 });
        await visit(page, row);
        const place = (width: number): string => `${row.path}, ${colorScheme}, ${width} px`;
        expect(await page.evaluate(() => document.documentElement.dataset['theme'])).toBe(colorScheme);
        const byTab = await faultsByTab(page);
        faults.push(...byTab.map((fault) => `${place(colorScheme === 'light' ? 360 : 1440)}: ${fault}`));
        if (row.path.includes('value=')) {
          // What lies over the screen is put away from anywhere, without moving on first (WCAG 2.2, 2.4.11).
          await page.evaluate(() => document.querySelector<HTMLElement>('main')?.focus());
          await page.keyboard.press('Escape');
          await page.getByTestId('value-sheet').waitFor({ state: 'detached' });
          await page.goBack();
          await visit(page, row);
        }
        for (const width of widths) {
          await page.setViewportSize({ width, height: width > 2000 ? 2160 : 900 });
          // On a wall stands what stands at 1440 px, only further apart.
          const found = width > 2000 ? await faultsOfLayout(page) : await faultsOnScreen(page);
          faults.push(...found.map((fault) => `${place(width)}: ${fault}`));
        }
        if (row.route === 'alarms') {
          await page.getByRole('button', { name: 'Acknowledge…' }).first().click();
          faults.push(...(await axeViolations(page)).map((fault) => `${place(3840)}, with a form: ${fault}`));
        }
      }
      faults.push(...troubles.filter(notAnAnswer).map((trouble) => `${colorScheme}: ${trouble}`));
    }
    expect(faults).toEqual([]);
  }, 900_000);

  test('calls all that it shows old once the server stops, and live again when it goes on', async () => {
    const { page } = keep(await openPage(hall.ebbline.url));
    const pages = new Map<ScreenAddress, Page>();
    for (const row of rows) {
      const tab = await page.context().newPage();
      await visit(tab, row);
      pages.set(row, tab);
    }
    hall.ebbline.child.kill('SIGSTOP');
    try {
      const faults: string[] = [];
      for (const [{ path, route }, tab] of pages)
        // The signs are explained by invented values, which the screen says.
        if (!['sign-in', 'set-up', 'signs'].includes(route))
          faults.push(...(await faultsWhereLost(tab)).map((fault) => `${path}: ${fault}`));
      expect(faults).toEqual([]);
    } finally {
      hall.ebbline.child.kill('SIGCONT');
    }
    for (const [{ route }, tab] of pages)
      if (!['sign-in', 'set-up'].includes(route)) await tab.getByTestId('old-banner').waitFor({ state: 'detached' });
  }, 600_000);

  test('is found out with a button that has no name, is too small, shows no focus and makes the page too wide', async () => {
    const { page } = keep(await openPage(hall.ebbline.url));
    await page.goto(`${hall.ebbline.url}/sign-in`);
    await page.getByTestId('sign-in').waitFor();
    await page.evaluate(() => {
      const planted = document.createElement('button');
      document.querySelector('main')?.append(planted, 'Unit N1of 3 units', ' = undefined');
      Object.assign(planted.style, { width: '9000px', minHeight: '4px', height: '4px', padding: '0', outline: 'none' });
    });
    expect((await axeViolations(page)).join()).toMatch(/button-name/);
    const faults = (await faultsOnScreen(page)).join('\n');
    expect(faults).toMatch(/scrolls sideways/);
    expect(faults).toMatch(/has no name: button/);
    expect(faults).toMatch(/broken words: .*N1of 3 units/);
    expect(faults).toMatch(/too small, 9000 × 4 px/);
    expect((await faultsByTab(page)).join('\n')).toMatch(/shows no focus: button/);
  });
});
