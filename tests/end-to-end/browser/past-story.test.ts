import type { SettingChanges } from '@ebbline/shared/contract/alarm-list';
import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { startBroker } from '../../helpers/broker';
import { startEbbline, type Ebbline } from '../../helpers/ebbline';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { connectSender } from '../../integration/app/telemetry';
import { dataFolder } from '../data-folder';
import { axeViolations } from './axe-violations';
import { openPage } from './open-page';
import { smallSiteFile } from '../../integration/app/running-app';

const startMs = Date.UTC(2026, 2, 3, 2);
const iso = (second: number): string => new Date(startMs + second * 1000).toISOString().replace('.000', '');

suiteNeeding(['chromium'], 'a past hour', () => {
  const keep = stopAfterAll();
  let ebbline: Ebbline;

  /** Water is found from the 100th second of the plant's own time to the 160th; the flow falls at the 200th. */
  beforeAll(async () => {
    const data = keep(await dataFolder());
    const broker = keep(await startBroker());
    const env = { EBBLINE_SITE: smallSiteFile, EBBLINE_MQTT_URL: broker.url, EBBLINE_CLOCK: 'source' };
    ebbline = keep(await startEbbline({ data: data.path, env: { ...env, EBBLINE_SIMULATOR: 'off' } }));
    const sender = keep(await connectSender(broker.url));
    for (let second = 0; second < 900; second += 1) {
      const leak = second >= 100 && second < 160 ? 'wet' : 'dry';
      await sender.m1(startMs + second * 1000, { leak, flow: second < 200 ? 346 : 301 });
    }
    await until(async () => (await ebbline.health()).clock.now === `${iso(899).slice(0, -1)}.000Z`, {
      what: 'the last second',
    });
  });

  test('is gone through by keys and alarms, shows the loop as it was, is never taken for live, and leads back', async () => {
    const { page, troubles } = keep(await openPage(ebbline.url));
    await page.goto(`${ebbline.url}/halls/north`);
    await page.getByRole('link', { name: 'past hours' }).click();
    const banner = page.getByTestId('past-banner');
    await banner.getByText('Past: 2026-03-03').waitFor();
    await page.getByTestId('loop-m1').waitFor();
    expect(page.url()).toContain(`/halls/north/past?at=${iso(299)}`);

    // By the alarm before to the second in which it was told.
    await page.getByRole('button', { name: 'Alarm before' }).click();
    await page.waitForURL((url) => url.searchParams.get('at') !== iso(299));
    await page.locator('.past-picture[aria-busy=false]').waitFor();
    await page.getByTestId('loop-m1').getByText('Water').first().waitFor();
    const told = new URL(page.url()).searchParams.get('at') ?? '';
    expect(Date.parse(told)).toBeGreaterThanOrEqual(startMs + 100_000);
    expect(Date.parse(told)).toBeLessThan(startMs + 110_000);

    // The loop in that second, by the name in its row.
    await page.getByTestId('loop-m1').getByRole('link').first().click();
    await page.getByTestId('alarm-m1:WATER-1').waitFor();
    expect(page.url()).toContain(`/units/m1/past?at=${told}`);
    const flow = page.getByTestId('point-loop.flow');
    await flow.getByText('346').waitFor();
    expect(await page.getByRole('button', { name: /Acknowledge|permit|test/ }).count()).toBe(0);

    // By keys to where the flow had fallen; the time is said.
    const slider = page.getByTestId('past-slider');
    await slider.focus();
    for (let i = 0; i < 2; i += 1) await page.keyboard.press('PageUp');
    await flow.getByText('301').waitFor();
    expect(await slider.getAttribute('aria-valuetext')).toMatch(/^2026-03-03 \d\d:0[45]:\d\d$/);
    await banner.getByText('not live', { exact: false }).waitFor();

    await page.getByRole('link', { name: 'Back to live' }).click();
    await page.getByRole('button', { name: 'Open a permit…' }).waitFor();
    expect(await page.getByTestId('past-banner').count()).toBe(0);
    expect(troubles).toEqual([]);
  });

  test('lets another delay be tried over it, which would have told nothing, and changes nothing that runs', async () => {
    const { page, troubles } = keep(await openPage(ebbline.url));
    await page.goto(`${ebbline.url}/limits/WATER-1?unit=m1&from=${iso(0)}&to=${iso(300)}`);
    const form = page.getByRole('form', { name: 'Limit trial of WATER-1' });
    await form.getByText('Change a value').waitFor();
    await form.locator('input[name=onDelaySeconds]').fill('90');
    await form.getByText('To be tried:').waitFor();
    await form.getByRole('button', { name: 'Try', exact: true }).click();
    const result = page.getByTestId('trial-result');
    // Water stood for 60 s: it was told once, and with 90 s of delay it would not have been.
    await result.getByTestId('live-raised').getByText('1', { exact: true }).waitFor();
    expect(await result.getByTestId('proposed-raised').innerText()).toBe('0');
    await result.getByText('It would not have been raised at all.').waitFor();
    await page.waitForURL(/trial=/);
    // Whoever is sent the address sees the same.
    await page.reload();
    await result.getByTestId('live-raised').getByText('1', { exact: true }).waitFor();
    expect(await axeViolations(page)).toEqual([]);
    const { changes } = await ebbline.get<SettingChanges>('/api/alarm-list/changes');
    expect(changes).toEqual([]);
    expect(troubles).toEqual([]);
  });

  /** Widths of the page with each picture in turn as wide as on a wall, as before it is drawn anew for a phone. */
  const widthsAsDrawnForAWall = (page: Page): Promise<readonly number[]> =>
    page.evaluate(() => {
      const pictures = [...document.querySelectorAll('main svg[width]')].filter(({ clientWidth }) => clientWidth > 200);
      const widths = pictures.map((picture) => {
        const drawn = picture.getAttribute('width') ?? '';
        picture.setAttribute('width', '3000');
        const { scrollWidth } = document.documentElement;
        picture.setAttribute('width', drawn);
        return scrollWidth;
      });
      return [...new Set(widths)];
    });

  const cases = (['/halls/north/past', '/units/m1/past'] as const).flatMap((path) =>
    (['light', 'dark'] as const).map((scheme) => ({ path, scheme })),
  );

  test.for(cases)('$path in $scheme has no violation that axe-core finds', async ({ path, scheme }) => {
    const { page, troubles } = keep(await openPage(ebbline.url, { colorScheme: scheme }));
    await page.goto(`${ebbline.url}${path}?at=${iso(150)}`);
    await page.locator('.past-picture[aria-busy=false]').waitFor();
    await page.locator('.past-mark').first().waitFor();
    await page.locator('.past-list > summary').click();
    await page.locator('.past-more > summary').click();
    expect(await axeViolations(page)).toEqual([]);
    await page.setViewportSize({ width: 360, height: 780 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    expect(await widthsAsDrawnForAWall(page)).toEqual([360]);
    expect(await axeViolations(page)).toEqual([]);
    expect(troubles).toEqual([]);
  });
});
