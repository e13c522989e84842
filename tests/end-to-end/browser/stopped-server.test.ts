import { expect, test } from 'vitest';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { openPage } from './open-page';
import { startSmallHall } from './small-hall';

suiteNeeding(['chromium'], 'a stopped server', () => {
  const keep = stopAfterAll();

  test('makes everything on the screen old within three seconds, and live again when it goes on', async () => {
    const { ebbline } = keep(await startSmallHall());
    const { page } = keep(await openPage(ebbline.url));
    const banner = page.getByTestId('old-banner');
    const strip = page.getByTestId('strip-m1');
    await page.getByTestId('strip-m1-bar').waitFor();
    // The page itself notes when it first says so: what the test needs to look does not count.
    await page.evaluate(() => {
      const note = (): void => {
        const shown = document.querySelector('[data-testid=old-banner]') !== null;
        if (shown) document.documentElement.dataset['oldAt'] ??= String(Date.now());
        else delete document.documentElement.dataset['oldAt'];
      };
      new MutationObserver(note).observe(document.body, { childList: true, subtree: true });
    });

    const delaysMs: number[] = [];
    for (let round = 0; round < 3; round++) {
      await expectLive();
      const stoppedMs = Date.now();
      ebbline.child.kill('SIGSTOP');
      await banner.waitFor();
      delaysMs.push(Number(await page.evaluate(() => document.documentElement.dataset['oldAt'])) - stoppedMs);
      expect(await strip.getAttribute('class')).toContain('old');
      expect(await page.locator('main').getAttribute('class')).toContain('page-old');
      const strips = page.locator('svg.pressure-window');
      expect(await page.locator('svg.pressure-window.old').count()).toBe(await strips.count());
      ebbline.child.kill('SIGCONT');
    }
    await expectLive();
    // The promise itself. The median, as a machine whose processors are taken may delay the page's timer in one round.
    const medianMs = delaysMs.sort((a, b) => a - b)[1];
    expect(medianMs).toBeLessThan(3000);

    async function expectLive(): Promise<void> {
      await banner.waitFor({ state: 'detached' });
      await page.locator('svg.pressure-window[data-testid=strip-m1]:not(.old)').waitFor();
    }
  });
});
