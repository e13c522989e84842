import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { suiteNeeding } from '../../helpers/requirements';
import { startBroker } from '../../helpers/broker';
import { startEbbline, type Ebbline } from '../../helpers/ebbline';
import { stopAfterAll } from '../../helpers/stop-after';
import { connectSender } from '../../integration/app/telemetry';
import { dataFolder } from '../data-folder';
import { keepDoing } from '../row-of-units';
import { axeViolations } from './axe-violations';
import { openPage } from './open-page';

const smallSite = new URL('../../helpers/sites/small-site.yaml', import.meta.url);

suiteNeeding(['chromium'], 'a zero check in the browser', () => {
  const keep = stopAfterAll();
  let ebbline: Ebbline;
  beforeAll(async () => {
    const data = keep(await dataFolder());
    const broker = keep(await startBroker());
    const site = join(data.path, 'site.yaml');
    const text = await readFile(smallSite, 'utf8');
    await writeFile(site, text.replace('HOLD: standby }', 'HOLD: standby, OPEN: vented }'));
    const env = { EBBLINE_SITE: site, EBBLINE_MQTT_URL: broker.url, EBBLINE_SIMULATOR: 'off', EBBLINE_CLOCK: 'source' };
    ebbline = keep(await startEbbline({ data: data.path, env }));
    const sender = keep(await connectSender(broker.url));
    // Vented for other work: tanks at the barometer, the supply main 0.1 m below the surface. Ten seconds of it in each of ours.
    let atMs = Date.UTC(2031, 4, 6, 7, 8, 9);
    const vented = {
      supply: { t: 25, p: 0.98 },
      return: { t: 25 },
      tank: { p: 101.325, level: 50 },
      separator: { p: 101.325 },
      flow: 0,
      exhaust: 0,
      vacuum: { hz: 0 },
      pump: { run: 0 },
      mode: 'OPEN',
    };
    keep(
      keepDoing(async () => {
        atMs += 1000;
        await sender.m1(atMs, vented);
        await sender.raw('small/north/barometer', '1013.25');
      }, 100),
    );
  });

  test.for(['light', 'dark'] as const)(
    'is read, begun, confirmed step by step, drawn on its way to rest, and ends as a record with its interval, in %s',
    async (colorScheme) => {
      const { page, troubles } = keep(await openPage(ebbline.url, { colorScheme }));
      await page.goto(`${ebbline.url}/guided-tests`);
      await page.getByTestId('offer-m1-zeroCheck').click();
      await page.getByRole('button', { name: 'Begin', exact: true }).click();
      await page.getByTestId('step-cautions').getByRole('checkbox').check();
      await page.getByTestId('step-cautions').getByRole('button', { name: 'Confirm' }).click();
      await page.getByTestId('step-stands').getByRole('button', { name: 'Confirm' }).click();
      // A page that stood still for those seconds has the result in its place.
      await page.getByTestId('guided-live').or(page.getByTestId('guided-result')).first().waitFor();
      expect(await axeViolations(page)).toEqual([]);
      await page.getByTestId('guided-result').waitFor();
      expect(await page.getByTestId('guided-status').textContent()).toMatch(/(Passes|Not decided|Fails)/);
      expect(await page.getByTestId('guided-result').textContent()).toMatch(/Separator.*±.*kPa.*limit/s);
      expect(await axeViolations(page)).toEqual([]);
      await page.emulateMedia({ media: 'print' });
      expect(await page.getByRole('button', { name: 'Print' }).isVisible()).toBe(false);
      const looks = await page.evaluate(() => {
        const { color, backgroundColor } = getComputedStyle(document.documentElement);
        const feet = document.adoptedStyleSheets.flatMap((sheet) => [...sheet.cssRules]).map(({ cssText }) => cssText);
        return { color, backgroundColor, feet: feet.join() };
      });
      // Whatever the theme: ink on white, and a foot that says whose record it is.
      expect(looks).toMatchObject({ color: 'rgb(0, 0, 0)', backgroundColor: 'rgb(255, 255, 255)' });
      expect(looks.feet).toMatch(
        /@bottom-left.*Unit one.*@bottom-right.*Guided test m1:zeroCheck:\d+.*counter\(page\)/,
      );
      for (const format of ['A4', 'Letter'] as const) {
        const sheets = (await page.pdf({ format })).toString('latin1').match(/\/Type \/Page\b/g) ?? [];
        expect(sheets.length, format).toBeLessThanOrEqual(3);
        expect(sheets.length, format).toBeGreaterThan(0);
      }
      expect(troubles).toEqual([]);
    },
  );
});
