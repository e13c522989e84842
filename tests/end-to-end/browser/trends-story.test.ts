import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { axeViolations } from './axe-violations';
import { openPage } from './open-page';
import { type SmallHall, startSmallHall } from './small-hall';

const address = '/trends?points=m1:heatRemoved,m1:supply.temperature&last=900&uncertainty=yes&earlier=3600';

suiteNeeding(['chromium'], 'a trend with an alarm and a note', () => {
  const keep = stopAfterAll();
  let hall: SmallHall;
  beforeAll(async () => {
    hall = keep(await startSmallHall());
    hall.change({ leak: 'wet' });
    await until(async () => (await hall.ebbline.alarms()).some(({ entry }) => entry === 'WATER-1'), {
      everyMs: 100,
      what: 'WATER-1',
    });
    const note = { text: '=HYPERLINK("x") hose of rack 4 changed', unit: 'm1', operator: 'Ines' };
    expect((await hall.ebbline.post('/api/notes', note)).status).toBe(200);
  });

  async function trend(scheme: 'light' | 'dark', path = address): Promise<{ page: Page; troubles: readonly string[] }> {
    const opened = keep(await openPage(hall.ebbline.url, { colorScheme: scheme }));
    await opened.page.goto(`${hall.ebbline.url}${path}`);
    await opened.page.locator('.alarm-span').first().waitFor();
    await opened.page.locator('.note-mark').first().waitFor();
    await opened.page.locator('.lane-chart canvas').first().waitFor();
    return opened;
  }

  test.for(['light', 'dark'] as const)('in %s has no violation that axe-core finds', async (scheme) => {
    const { page, troubles } = await trend(scheme);
    expect(await axeViolations(page)).toEqual([]);
    await page.locator('.note-mark').first().click();
    await page.getByText('As it ran from another moment on').click();
    expect(await axeViolations(page)).toEqual([]);
    expect(troubles).toEqual([]);
  });

  test('fits a phone of 360 px', async () => {
    const { page } = await trend('light');
    await page.setViewportSize({ width: 360, height: 780 });
    await page.waitForFunction(() => document.documentElement.scrollWidth <= window.innerWidth);
    const mark = await page.locator('.alarm-span').first().boundingBox();
    expect(mark?.width).toBeGreaterThanOrEqual(24);
    expect(mark?.height).toBeGreaterThanOrEqual(24);
  });

  test('leads from an alarm to its rows in the journal by keyboard', async () => {
    const { page } = await trend('light');
    await page.locator('.alarm-span[tabindex="0"]').focus();
    await page.getByText(/^Priority \d, .*raised/).waitFor();
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/alarms\/journal\?alarm=m1:|\/alarms\/journal\?alarm=m1%3A/);
    await page.getByTestId('journal-rows').waitFor();
  });

  test('is taken along as a picture for paper, light and not empty, from the dark theme too', async () => {
    const { page } = await trend('dark');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'picture (PNG)' }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/^trend-.*\.png$/);
    const png = await readFile(await download.path());
    expect(png.subarray(1, 4).toString()).toBe('PNG');
    const { corner, dark, width } = await page.evaluate(async (base64) => {
      const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
      const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
      const ctx = new OffscreenCanvas(image.width, image.height).getContext('2d');
      if (ctx === null) throw new Error('no canvas');
      ctx.drawImage(image, 0, 0);
      const { data } = ctx.getImageData(0, 0, image.width, image.height);
      let inked = 0;
      for (let at = 0; at < data.length; at += 4) if ((data[at] ?? 255) < 128) inked += 1;
      return { corner: [...data.slice(0, 4)], dark: inked / (data.length / 4), width: image.width };
    }, png.toString('base64'));
    expect(corner).toEqual([255, 255, 255, 255]);
    expect(width).toBe(2400);
    // Lines and letters, and far more paper than ink.
    expect(dark).toBeGreaterThan(0.002);
    expect(dark).toBeLessThan(0.2);
  });

  test('is taken along as a table with the rows that are drawn, their units and the zone', async () => {
    const { page } = await trend('light');
    await page.waitForFunction(
      () => !/waiting|Reading/.test(document.querySelector('.trends-drawn')?.textContent ?? ''),
    );
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'table (CSV)' }).click(),
    ]);
    const [header = '', ...rows] = (await readFile(await download.path(), 'utf8')).trimEnd().split('\r\n');
    expect(header).toMatch(/^"time \(UTC\)","time \([^)]+\)","[^"]*Heat removed, kW, mean"/);
    expect(header).toContain('60\u00a0min earlier, kW, mean');
    expect(rows.length).toBeGreaterThan(5);
    expect(rows.at(-1)).toMatch(/^"20\d\d-\d\d-\d\dT[\d:.]+Z","20\d\d-\d\d-\d\d [\d:]+",/);
  });
});
