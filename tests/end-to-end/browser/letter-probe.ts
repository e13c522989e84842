import { readFile } from 'node:fs/promises';
import { launchBrowser } from '../../helpers/browser';
import { found } from '../../helpers/requirements';
import { differenceOf } from './compare-pictures';
import { pictureFolder } from './kept-pictures';

/** Letters and signs as the browser of this machine draws them, with the fonts of this machine. */
export async function letterProbe(): Promise<Buffer> {
  const { browser, stop } = await launchBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 480, height: 96 }, deviceScaleFactor: 1 });
    await page.setContent(
      '<p style="margin: 8px; font: 20px/1.5 sans-serif">Rack 5: 48.3 ± 0.6 kPa → ≤ ≥ − · “air”</p>',
    );
    return await page.screenshot();
  } finally {
    await stop();
  }
}

/** Whether this machine draws letters as the one on which the pictures were taken: with other fonts nothing can be said of them. */
export async function drawsLettersAlike(): Promise<boolean> {
  if (found('chromium') === null) return false;
  const kept = await readFile(new URL('letters.png', pictureFolder)).catch(() => null);
  return kept !== null && differenceOf(kept, await letterProbe()) === null;
}
