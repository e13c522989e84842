import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { openPage } from './open-page';
import { takeWatched, watchPage } from './page-watch';
import { screenAddresses } from './screen-addresses';
import { startStillHall, type StillHall } from './small-hall';

/** What is called a good score of layout shift by the makers of browsers (from memory). */
const good = 0.1;
const sizes = [
  { width: 1440, height: 900 },
  { width: 360, height: 780 },
] as const;
/** Screens whose parts are read one by one, or of which this hall has nothing to show. */
const leftOut = ['setup', 'tightness-record', 'past-hall', 'past-loop', 'sign-in', 'set-up', 'account'];

/** What a screen shows of an alarm or of no record is not shown here: there it has come once nothing is waited for. */
const ofOtherHalls = /WATER-1|problem/;

/** A style of the test, which the policy of the page lets no page write. */
const withStyle = (page: Page, style: string): Promise<unknown> =>
  page.addInitScript((text) => {
    const planted = new CSSStyleSheet();
    planted.replaceSync(text);
    document.adoptedStyleSheets = [planted];
  }, style);

suiteNeeding(['chromium'], 'a screen that comes', () => {
  const keep = stopAfterAll();
  let hall: StillHall;
  beforeAll(async () => {
    hall = keep(await startStillHall());
  }, 600_000);

  test('moves nothing of itself aside, on a usual screen and on a phone', async () => {
    const rows = screenAddresses('none').filter(({ route }) => !leftOut.includes(route));
    expect(rows.length).toBeGreaterThan(10);
    const faults: string[] = [];
    for (const viewport of sizes) {
      const { page } = keep(await openPage(hall.ebbline.url, { viewport }));
      for (const { path, shown } of rows) {
        const tab = await page.context().newPage();
        await watchPage(tab);
        // However slow a machine is, the foot waits for the screen.
        await withStyle(tab, '.safety { animation-play-state: paused !important; }');
        await tab.goto(`${hall.ebbline.url}${path}`);
        await tab
          .locator(ofOtherHalls.test(shown) ? 'main h1' : shown)
          .first()
          .waitFor();
        await until(async () => (await tab.locator('main .waiting').count()) === 0, {
          everyMs: 20,
          what: `${path} to have come`,
        });
        const { shift, moved } = await takeWatched(tab);
        if (shift >= good)
          faults.push(`${viewport.width} px, ${path}: ${shift.toFixed(2)}, ${moved.slice(0, 4).join('; ')}`);
        await tab.close();
      }
    }
    expect(faults).toEqual([]);
  }, 600_000);

  test('is found out where its foot is pushed down', async () => {
    const { page } = keep(await openPage(hall.ebbline.url));
    const tab = await page.context().newPage();
    await watchPage(tab);
    await withStyle(tab, '.safety { animation: none !important; }');
    let answer: () => void = () => undefined;
    const seen = new Promise<void>((resolve) => (answer = resolve));
    await tab.route('**/api/alarm-list', async (route) => {
      await seen;
      await route.continue();
    });
    await tab.goto(`${hall.ebbline.url}/limits`);
    await tab.locator('.safety').waitFor();
    await tab.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    answer();
    await tab.getByTestId('limit-MARGIN-1').waitFor();
    expect((await takeWatched(tab)).moved.join()).toContain('safety');
  });
});
