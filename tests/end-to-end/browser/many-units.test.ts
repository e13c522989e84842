import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { startBroker } from '../../helpers/broker';
import { type Ebbline, startEbbline } from '../../helpers/ebbline';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { hallId, unitId } from '../../bench/bench-site';
import { dataFolder } from '../data-folder';
import { keepDoing, startSender, writeSite } from '../row-of-units';
import { axeViolations } from './axe-violations';
import { faultsOfLayout } from './look-over';
import { openPage } from './open-page';

const units = 200;
const hall = `/halls/${hallId(0)}`;
const lastRow = `loop-${unitId(units - 1)}`;

suiteNeeding(['chromium'], 'a hall of 200 units', () => {
  const keep = stopAfterAll();
  let ebbline: Ebbline;
  let feed: { stop(): Promise<void> };
  beforeAll(async () => {
    const data = keep(await dataFolder());
    const broker = keep(await startBroker());
    const site = await writeSite(data.path, units, units);
    ebbline = keep(
      await startEbbline({
        data: data.path,
        env: { EBBLINE_SITE: site, EBBLINE_MQTT_URL: broker.url, EBBLINE_SIMULATOR: 'off' },
      }),
    );
    const sender = keep(await startSender(broker.url, units));
    feed = keep(keepDoing(() => sender.sendAll(), 1000));
    await until(async () => (await ebbline.health()).lastSampleAge !== null, { everyMs: 250, what: 'a first sample' });
  });

  async function open(path: string, colorScheme: 'light' | 'dark', width: number, height: number): Promise<Page> {
    const { page, troubles } = keep(await openPage(ebbline.url, { colorScheme }));
    await page.setViewportSize({ width, height });
    await page.goto(`${ebbline.url}${path}`);
    await page.getByTestId(lastRow).waitFor({ timeout: 120_000 });
    expect(troubles).toEqual([]);
    return page;
  }
  /** Of all rows: how many there are, how tall all of them are, how low the lowest is, and by how much the page is too wide. */
  const look = (page: Page) =>
    page.evaluate(() => {
      const field = document.querySelector('.small-columns')?.getBoundingClientRect();
      const boxes = [...document.querySelectorAll('.small-row')].map((row) => row.getBoundingClientRect());
      return {
        rows: boxes.length,
        tall: field?.height ?? 0,
        lowest: Math.min(...boxes.map(({ height }) => height)),
        columns: new Set(boxes.map(({ left }) => left)).size,
        sideways: document.documentElement.scrollWidth - document.documentElement.clientWidth,
      };
    });

  test('is overseen on one screen, read on a phone, and accessible in both themes', async () => {
    for (const [scheme, width, height] of [
      ['light', 1440, 1000],
      ['dark', 3840, 2160],
      ['light', 360, 780],
    ] as const) {
      const page = await open(`${hall}?order=need`, scheme, width, height);
      const seen = await look(page);
      expect(seen, `${width}`).toMatchObject({ rows: units, sideways: 0 });
      expect(seen.lowest, `${width}`).toBeGreaterThanOrEqual(24);
      if (width > 480) expect(seen.tall, `${width}`).toBeLessThanOrEqual(height * 0.8);
      else expect(seen.columns).toBe(1);
      expect(await axeViolations(page), `${scheme} ${width}`).toEqual([]);
      await page.close();
    }
  }, 600_000);

  test('has rows that stand still in their columns while their values come', async () => {
    const page = await open(hall, 'light', 1440, 1000);
    await page.evaluate(() => {
      const root = document.documentElement;
      root.dataset['shifted'] = '';
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries() as unknown as { sources: { node: Node | null }[] }[])
          for (const { node } of entry.sources) {
            const row = (node instanceof Element ? node : node?.parentElement)?.closest('.small-row');
            if (row !== null && row !== undefined)
              root.dataset['shifted'] = `${root.dataset['shifted'] ?? ''}${row.textContent} `;
          }
      }).observe({ type: 'layout-shift' });
    });
    // By what the clock reads: its element is another one once a busy machine has let the page grow old.
    const times = new Set<string>();
    await until(async () => times.add(await page.locator('.clock').first().innerText()).size > 5, {
      everyMs: 250,
      what: 'frames',
    });
    expect(await page.evaluate(() => document.documentElement.dataset['shifted'])).toBe('');
  }, 600_000);

  test('shows all of itself on a wall, says loudly that nothing comes any more, and leaves by Escape', async () => {
    const page = await open(`${hall}?wall=on`, 'light', 1920, 1080);
    await page.getByTestId('wall').waitFor();
    const seen = await look(page);
    expect(seen.rows).toBe(units);
    const { inView, controls } = await page.evaluate(() => {
      const field = document.querySelector('.wall-field')?.getBoundingClientRect();
      const rows = [...document.querySelectorAll('.small-row')].map((row) => row.getBoundingClientRect());
      const shown = [...document.querySelectorAll('main button, main input, main select, nav a')].filter((one) =>
        one.checkVisibility(),
      );
      return { inView: rows.filter(({ bottom }) => bottom <= (field?.bottom ?? 0) + 1).length, controls: shown.length };
    });
    expect({ inView, controls }).toEqual({ inView: units, controls: 0 });
    expect(await page.evaluate(() => document.documentElement.dataset['theme'])).toBe('dark');
    expect(await axeViolations(page)).toEqual([]);
    ebbline.child.kill('SIGSTOP');
    try {
      const banner = page.getByTestId('old-banner');
      await banner.waitFor();
      const lettersPx = await banner.evaluate((one) => Number.parseFloat(getComputedStyle(one).fontSize));
      expect(lettersPx).toBeGreaterThan(1920 / 25);
    } finally {
      ebbline.child.kill('SIGCONT');
    }
    await page.keyboard.press('Escape');
    await page.locator('.hall-choices').waitFor();
    expect(new URL(page.url()).search).toBe('');
  }, 600_000);

  test('tells a flood of more than a hundred alarms as one event, once all units fall silent, and cuts nothing off', async () => {
    await feed.stop();
    const many = async () => (await ebbline.alarms()).length > 100;
    await until(many, { everyMs: 500, withinMs: 240_000, what: 'a hundred alarms' });
    const { page, troubles } = keep(await openPage(ebbline.url));
    for (const width of [1440, 360]) {
      await page.setViewportSize({ width, height: 900 });
      await page.goto(`${ebbline.url}/alarms`);
      await page.getByTestId('flood').waitFor({ timeout: 120_000 });
      expect(await faultsOfLayout(page), `${width}`).toEqual([]);
    }
    expect(troubles).toEqual([]);
  }, 600_000);
});
