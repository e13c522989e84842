import { beforeAll, expect, test } from 'vitest';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { axeViolations } from './axe-violations';
import { openPage } from './open-page';
import { type SmallHall, startSmallHall } from './small-hall';

suiteNeeding(['chromium'], 'the report of the shift that runs', () => {
  const keep = stopAfterAll();
  let hall: SmallHall;
  beforeAll(async () => {
    hall = keep(await startSmallHall());
    hall.change({ leak: 'wet' });
    await until(async () => (await hall.ebbline.alarms()).some(({ entry }) => entry === 'WATER-1'), {
      everyMs: 100,
      what: 'WATER-1',
    });
  });

  test('takes a note and a handover, in either theme without a violation that axe-core finds, also with its forms open', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      const { page, troubles } = keep(await openPage(hall.ebbline.url, { colorScheme }));
      await page.goto(`${hall.ebbline.url}/report?hall=north`);
      await page.getByTestId('stood-m1:WATER-1').waitFor();
      expect(await axeViolations(page)).toEqual([]);

      await page.getByRole('button', { name: 'Write a note…' }).click();
      await page.getByRole('textbox', { name: 'Note about' }).fill(`The tray is wet, ${colorScheme}.`);
      expect(await axeViolations(page)).toEqual([]);
      await page.getByRole('button', { name: 'Write it down' }).click();
      await page.getByTestId('notes').getByText(`The tray is wet, ${colorScheme}.`).waitFor();

      await page.getByRole('button', { name: 'Hand over…' }).click();
      await page.getByLabel('Who takes over').fill(`Omar ${colorScheme}`);
      await page.getByRole('button', { name: 'Hand over', exact: true }).click();
      await page.getByText(`Omar ${colorScheme}`).waitFor();
      // One person hands over, another takes over.
      await page.getByRole('button', { name: 'Take over…' }).first().click();
      await page.getByRole('button', { name: 'Take over', exact: true }).click();
      await page.getByRole('alert').getByText('taken over by another').waitFor();
      expect(await axeViolations(page)).toEqual([]);
      expect(troubles.filter((line) => !line.includes('409'))).toEqual([]);
    }
  });

  test('is printed in black on white from a dark screen, without what is acted with, on either paper', async () => {
    const { page } = keep(await openPage(hall.ebbline.url, { colorScheme: 'dark' }));
    await page.goto(`${hall.ebbline.url}/report`);
    await page.getByTestId('report').waitFor();
    const a4 = await page.pdf({ format: 'A4' });
    const letter = await page.pdf({ format: 'Letter' });
    // Points of 1/72 inch: 210 × 297 mm, and 8.5 × 11 inches.
    expect(a4.toString('latin1')).toMatch(/MediaBox \[0 0 59[45][.\d]* 84[12][.\d]*\]/);
    expect(letter.toString('latin1')).toMatch(/MediaBox \[0 0 612 792\]/);

    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const looks = await page.evaluate(() => {
      const root = getComputedStyle(document.documentElement);
      const hidden = [...document.querySelectorAll('.top, .by-screen')].every(
        (one) => getComputedStyle(one).display === 'none',
      );
      const heads = [...document.querySelectorAll('thead')].map((one) => getComputedStyle(one).display);
      const feet = document.adoptedStyleSheets.flatMap((sheet) => [...sheet.cssRules]).map(({ cssText }) => cssText);
      return { ink: root.color, paper: root.backgroundColor, hidden, heads: [...new Set(heads)], feet: feet.join() };
    });
    expect(looks).toMatchObject({ ink: 'rgb(0, 0, 0)', paper: 'rgb(255, 255, 255)', hidden: true });
    expect(looks.heads).toEqual(['table-header-group']);
    expect(looks.feet).toMatch(/@bottom-left.*the whole site · \d{4}-\d{2}-\d{2}/);
    expect(looks.feet).toMatch(/@bottom-right.*made \d{4}-\d{2}-\d{2} .* by Ada of the tests.*counter\(page\)/);
  });

  test('reads on a phone without moving sideways', async () => {
    const { page } = keep(await openPage(hall.ebbline.url));
    await page.setViewportSize({ width: 360, height: 780 });
    await page.goto(`${hall.ebbline.url}/report`);
    await page.getByTestId('report').waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  });
});
