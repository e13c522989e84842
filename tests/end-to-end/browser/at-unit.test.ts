import { expect, test } from 'vitest';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { axeViolations } from './axe-violations';
import { openPage } from './open-page';
import { startSmallHall } from './small-hall';

suiteNeeding(['chromium'], 'a unit on the panel that hangs at it, and on a phone', () => {
  const keep = stopAfterAll();

  test('whoever stands there sees the values, what stands and what to do without moving a thing, and acknowledges with a thumb; on a phone the loop says the same first', async () => {
    const hall = keep(await startSmallHall());
    hall.change({ leak: 'wet' });
    await until(async () => (await hall.ebbline.alarms()).some(({ entry }) => entry === 'WATER-1'), {
      everyMs: 100,
      what: 'WATER-1',
    });
    const { page, troubles } = keep(await openPage(hall.ebbline.url));
    await page.goto(`${hall.ebbline.url}/units/m1/at-unit`);
    const alarm = page.getByTestId('at-unit-alarm-m1:WATER-1');

    for (const [width, height] of [
      [800, 1280],
      [1024, 600],
    ] as const) {
      await page.setViewportSize({ width, height });
      await alarm.waitFor();
      const seen = await page.evaluate(() => ({
        wide: document.documentElement.scrollWidth > innerWidth,
        tall: document.documentElement.scrollHeight > innerHeight,
        small: [...document.querySelectorAll('button, a[href], input, select')]
          .filter((one) => one.getClientRects().length > 0 && !one.classList.contains('skip'))
          .filter((one) => (one.closest('label') ?? one).getBoundingClientRect().height < 44)
          .map((one) => one.outerHTML.slice(0, 80)),
        below: [...document.querySelectorAll('.at-unit-value, .at-unit-bar, .at-unit-alarm h3, .at-unit-first')]
          .filter((one) => one.getBoundingClientRect().bottom > innerHeight)
          .map((one) => one.textContent),
        bar: document.querySelector('.at-unit-bar')?.getBoundingClientRect().top ?? 0,
      }));
      expect(seen).toMatchObject({ wide: false, tall: false, small: [], below: [] });
      expect(seen.bar).toBeGreaterThan(height * 0.75);
      for (const scheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme: scheme });
        await page.reload();
        await alarm.waitFor();
        expect(await axeViolations(page), `${width} ${scheme}`).toEqual([]);
      }
    }

    await page.getByTestId('at-unit-next').click();
    await alarm.getByRole('form').waitFor();
    expect(await axeViolations(page)).toEqual([]);
    await alarm.getByRole('button', { name: 'Acknowledge', exact: true }).click();
    await alarm.getByText('Confirmed by the server').waitFor();
    const [acknowledged] = (await hall.ebbline.alarms()).filter(({ entry }) => entry === 'WATER-1');
    expect(acknowledged?.acknowledgedBy).not.toBe(null);
    await page.getByTestId('at-unit-margin').getByRole('link').click();
    await page.getByTestId('value-uncertainty').waitFor();
    expect(new URL(page.url()).pathname).toBe('/units/m1/at-unit');

    await page.setViewportSize({ width: 360, height: 780 });
    await page.goto(`${hall.ebbline.url}/units/m1`);
    const first = page.locator('.loop-aside .first-action').first();
    await first.waitFor();
    const box = await first.boundingBox();
    // Above the row of the screens at the foot.
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThan(780 - 56);
    expect(await page.locator('.along-the-path').count()).toBe(0);
    await page.getByTestId('open-path').click();
    await page.locator('.along-the-path svg').waitFor();
    await page.waitForURL(/open=path/);
    expect(await axeViolations(page)).toEqual([]);

    // What is opened lies beside the path on a wide screen, not over it.
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.goto(`${hall.ebbline.url}/units/m1?value=vacuumMargin`);
    await page.getByTestId('value-uncertainty').waitFor();
    const path = await page.locator('.along-the-path').boundingBox();
    const sheet = await page.getByTestId('value-sheet').boundingBox();
    expect((path?.x ?? 0) + (path?.width ?? 0)).toBeLessThanOrEqual(sheet?.x ?? 0);
    expect(troubles).toEqual([]);
  });
});
