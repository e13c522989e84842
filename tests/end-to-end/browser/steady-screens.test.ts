import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { startBroker } from '../../helpers/broker';
import { type Ebbline, startEbbline } from '../../helpers/ebbline';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { smallSiteFile } from '../../integration/app/running-app';
import { connectSender, type Sender } from '../../integration/app/telemetry';
import { dataFolder } from '../data-folder';
import { faultsOnScreen } from './look-over';
import { openPage } from './open-page';
import { takeWatched, type Watched, watchPage } from './page-watch';

const startMs = Date.UTC(2026, 2, 3, 2);
/** What stands there before a unit sent anything. */
const screens = [
  { name: 'Hall', path: '/halls/north', shown: '[data-testid="loop-m1"]' },
  { name: 'Loop', path: '/units/m1', shown: '.loop-body' },
  { name: 'Alarms', path: '/alarms', shown: 'main h1' },
] as const;
type ScreenName = (typeof screens)[number]['name'];
const withValues: readonly ScreenName[] = ['Hall', 'Loop'];
/** What is called a good score of layout shift by the makers of browsers (from memory). */
const good = 0.1;
const pathOfTrends = '/trends?points=m1:vacuumMargin,m1:supply.temperature&last=900';

/** As a sound unit tells itself: every value sways a little, some over the edge of a digit or of a unit of measure. */
const swaying = (second: number): Readonly<Record<string, unknown>> => {
  const sway = Math.sin(second);
  return {
    supply: { t: 35 + 0.08 * sway, p: -20 + 0.15 * sway },
    return: { t: 43.5 - 0.08 * sway },
    tank: { p: 70 + 0.1 * sway, level: 55 + 0.2 * sway },
    separator: { p: 32 - 0.1 * sway },
    flow: 346 + 2 * sway,
    exhaust: 40 + 0.5 * sway,
    racks: { r1: { flow: 43 + 0.3 * sway, t: 43 + 0.1 * sway }, r2: { flow: 43 - 0.3 * sway, t: 44 } },
    chips: { p1: { t: 61 + 0.2 * sway, w: 1000 + 4 * sway } },
  };
};

/** What moves although the browser is asked for less of it; `planted` is given a transition and an animation of its own. */
const motionOn = (page: Page) =>
  page.evaluate(() => {
    const planted = document.createElement('p');
    planted.style.transition = 'opacity 3s';
    planted.style.animation = 'planted 3s';
    document.querySelector('main')?.append(planted);
    const seconds = (times: string): number =>
      Math.max(...times.split(',').map((time) => Number.parseFloat(time) / (time.trim().endsWith('ms') ? 1000 : 1)));
    const moving = [...document.querySelectorAll('*')].flatMap((one) =>
      [null, '::before', '::after'].flatMap((part) => {
        const { transitionDuration, animationDuration } = getComputedStyle(one, part);
        const longest = Math.max(seconds(transitionDuration), seconds(animationDuration));
        if (longest <= 0.01) return [];
        return [one === planted ? 'planted' : `${one.tagName}.${one.getAttribute('class') ?? ''}${part ?? ''}`];
      }),
    );
    planted.remove();
    return [...moving, ...document.getAnimations().map(({ playState }) => `an animation, ${playState}`)];
  });

suiteNeeding(['chromium'], 'a screen that is looked at for a whole shift', () => {
  const keep = stopAfterAll();
  const tabs = new Map<ScreenName, Page>();
  let ebbline: Ebbline;
  let sender: Sender;
  let second = 0;

  /** One second of the plant's own time: the room, the other unit's sign of life, and where it tells anything the unit's values. */
  async function tellSecond(changed: Readonly<Record<string, unknown>> | null): Promise<void> {
    const atMs = startMs + second * 1000;
    await sender.raw('small/m2/return/t', JSON.stringify({ v: 43, ts: changed === null ? atMs : atMs - 1000 }));
    await sender.raw('small/north/barometer', '1013.25');
    await sender.raw('small/north/air', JSON.stringify({ t: 24 + 0.1 * Math.sin(second), rh: 45 }));
    if (changed !== null) await sender.m1(atMs, { ...swaying(second), ...changed });
    second += 1;
  }

  const timeOf = (at: number): string => new Date(startMs + at * 1000).toISOString().slice(11, 19);

  async function shownEverywhere(text: string, testId = 'clock'): Promise<void> {
    for (const [name, tab] of tabs)
      await until(async () => (await tab.getByTestId(testId).innerText()).includes(text), {
        everyMs: 20,
        what: `${text} on ${name}`,
      });
  }

  /** So many seconds of the plant's own time, each of which is on every screen before the next one is told. */
  async function tell(seconds: number, changed: Readonly<Record<string, unknown>> = {}): Promise<void> {
    for (let told = 0; told < seconds; told += 1) {
      await tellSecond(changed);
      await shownEverywhere(timeOf(second - 1));
    }
  }

  async function takeAll(): Promise<Readonly<Record<ScreenName, Watched>>> {
    const watched: [string, Watched][] = [];
    for (const [name, tab] of tabs) watched.push([name, await takeWatched(tab)]);
    return Object.fromEntries(watched) as Record<ScreenName, Watched>;
  }

  beforeAll(async () => {
    const data = keep(await dataFolder());
    const broker = keep(await startBroker());
    const env = { EBBLINE_SITE: smallSiteFile, EBBLINE_MQTT_URL: broker.url, EBBLINE_CLOCK: 'source' };
    ebbline = keep(await startEbbline({ data: data.path, env: { ...env, EBBLINE_SIMULATOR: 'off' } }));
    sender = keep(await connectSender(broker.url));
    await tellSecond(null);
    await tellSecond(null);
    const { page } = keep(await openPage(ebbline.url));
    for (const { name, path, shown } of screens) {
      const tab = await page.context().newPage();
      await watchPage(tab);
      await tab.goto(`${ebbline.url}${path}`);
      await tab.locator(shown).first().waitFor();
      await tab.evaluate(async () => {
        await document.fonts.ready;
      });
      tabs.set(name, tab);
    }
    await page.close();
    await shownEverywhere(timeOf(second - 1));
  }, 600_000);

  test('keeps the room of the first values, and moves little when they come into what was drawn without them', async () => {
    await shownEverywhere('live', 'connection');
    await takeAll();
    const margin = /\d\s±\s[\d.]+\skPa(?!\sabsolute)/;
    for (const name of withValues) expect(await tabs.get(name)?.locator('main').innerText()).not.toMatch(margin);
    // The second one shows what takes two samples.
    await tell(2);
    for (const name of withValues)
      await until(async () => margin.test((await tabs.get(name)?.locator('main').innerText()) ?? ''), {
        everyMs: 20,
        what: `a margin on ${name}`,
      });
    const watched = await takeAll();
    for (const name of withValues)
      expect(watched[name].shift, `${name}: ${watched[name].moved.join('; ')}`).toBeLessThan(good);
  }, 600_000);

  test('moves nothing and says nothing over twenty frames in which values tick', async () => {
    await tell(2);
    await takeAll();
    await tell(20);
    const watched = await takeAll();
    expect(await ebbline.alarms()).toEqual([]);
    for (const name of withValues)
      expect(watched[name].shift, `${name}: ${watched[name].moved.join('; ')}`).toBeLessThan(0.01);
    expect(Object.values(watched).flatMap(({ said }) => said)).toEqual([]);
  }, 600_000);

  test('says a new alarm once or twice, wherever it is looked at', async () => {
    for (let told = 0; told < 30 && (await ebbline.alarms()).length === 0; told += 1) await tell(1, { leak: 'wet' });
    await tell(3, { leak: 'wet' });
    expect((await ebbline.alarms()).map(({ id }) => id)).toEqual(['m1:WATER-1']);
    const watched = await takeAll();
    for (const [name, { said }] of Object.entries(watched)) {
      expect(said.length, `${name}: ${said.join(' | ')}`).toBeGreaterThanOrEqual(1);
      expect(said.length, `${name}: ${said.join(' | ')}`).toBeLessThanOrEqual(2);
    }
  }, 600_000);

  test('is found out where something moves or speaks', async () => {
    const tab = tabs.get('Hall');
    if (tab === undefined) throw new Error('no screen is open');
    await takeWatched(tab);
    for (const text of ['planted', 'said again'])
      await tab.evaluate(async (said) => {
        const planted = document.querySelector<HTMLElement>('.planted') ?? document.createElement('p');
        planted.className = 'planted';
        planted.textContent = said;
        planted.setAttribute('role', 'timer');
        planted.style.height = '200px';
        document.querySelector('main')?.prepend(planted);
        await new Promise((done) => requestAnimationFrame(done));
      }, text);
    const { shift, moved, said } = await takeWatched(tab);
    expect(shift).toBeGreaterThan(0.05);
    expect(moved.length).toBeGreaterThan(0);
    expect(said).toEqual(['planted', 'said again']);
    for (const one of tabs.values()) await one.close();
    tabs.clear();
  });

  test('keeps still for who asked for less motion, with an alarm standing', async () => {
    const { page, troubles } = keep(await openPage(ebbline.url, { reducedMotion: 'reduce' }));
    for (const { path, shown } of screens) {
      await page.goto(`${ebbline.url}${path}`);
      await page.locator(shown).first().waitFor();
      expect(await motionOn(page), path).toEqual([]);
    }
    // Who did not ask for it is shown what moves: so it would have been found above.
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    expect(await motionOn(page)).toContain('planted');
    expect(troubles).toEqual([]);
  }, 600_000);

  test('stands on a wall of 3840 × 2160 without a fault, and fits a phone as soon as it is moved to one', async () => {
    const viewport = { width: 3840, height: 2160 };
    const { page, troubles } = keep(await openPage(ebbline.url, { viewport, colorScheme: 'dark' }));
    const faults: string[] = [];
    const rows = [
      ['/halls/north', '[data-testid="strip-m1-bar"]'],
      ['/units/m1', '[data-testid="alarm-m1:WATER-1"]'],
      ['/alarms', '[data-testid="alarm-m1:WATER-1"]'],
      [pathOfTrends, '.lane-chart canvas'],
    ] as const;
    for (const [path, shown] of rows) {
      await page.setViewportSize(viewport);
      await page.goto(`${ebbline.url}${path}`);
      await page.locator(shown).first().waitFor();
      faults.push(...(await faultsOnScreen(page)).map((fault) => `${path}: ${fault}`));
      await page.setViewportSize({ width: 360, height: 780 });
      const width = await page.evaluate(() => document.documentElement.scrollWidth);
      if (width > 360) faults.push(`${path}: ${width} px wide on a phone`);
    }
    expect(faults).toEqual([]);
    expect(troubles).toEqual([]);
  }, 600_000);
});
