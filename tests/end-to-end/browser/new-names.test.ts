import { beforeAll, expect, test } from 'vitest';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { keepDoing } from '../row-of-units';
import { axeViolations } from './axe-violations';
import { openPage } from './open-page';
import { type SmallHall, startSmallHall } from './small-hall';

suiteNeeding(['chromium'], 'a gateway with names of its own', () => {
  const keep = stopAfterAll();
  let hall: SmallHall;
  beforeAll(async () => {
    hall = keep(await startSmallHall());
    const status = { FilterDP_kPa: 11.4, SepPress_kPaA: 38.2, serial: 88_213 };
    keep(keepDoing(() => hall.send('works/cdu-m2/status', JSON.stringify(status)), 500));
  });

  test('is listened to, proposed with reasons, and tried with the site file, on a desk and on a phone, without a violation that axe-core finds', async () => {
    for (const [colorScheme, width] of [
      ['light', 1440],
      ['dark', 360],
    ] as const) {
      const { page, troubles } = keep(
        await openPage(hall.ebbline.url, { colorScheme, viewport: { width, height: 900 } }),
      );
      await page.goto(`${hall.ebbline.url}/setup/m2`);
      await page.getByLabel('Topics to listen to').fill('works/#');
      await page.getByRole('button', { name: /^Listen/ }).click();
      const place = page.getByTestId('heard-works/cdu-m2/status → FilterDP_kPa');
      await place.getByText('its name speaks of filter and drop').waitFor();
      await page.getByText('1 place that nothing speaks for').waitFor();
      // The separator's pressure is a point of m2 already, so only the other is chosen by itself.
      const lines = page.getByRole('textbox', { name: 'Lines for the site file' });
      expect(await lines.inputValue()).toBe(
        "units:\n  m2:\n    points:\n      filter.pressureDrop: { topic: 'works/cdu-m2/status', path: ['FilterDP_kPa'], unit: 'kPa' }\n",
      );
      await page.getByRole('button', { name: 'Check with the site file' }).click();
      await page.getByText('With these lines the site file would be taken.').waitFor();
      expect(await axeViolations(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      const saved = page.waitForEvent('download');
      await page.getByRole('button', { name: 'Download the whole site file' }).click();
      expect((await saved).suggestedFilename()).toBe('site.yaml');
      expect(troubles).toEqual([]);
    }
  });
});
