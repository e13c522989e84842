import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { foundNow, suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { differenceOf, markedDifference } from './compare-pictures';
import { drawsLettersAlike, letterProbe } from './letter-probe';
import { type KeptPicture, keptPictures, pictureFolder } from './kept-pictures';
import { openPage } from './open-page';
import { type PlayedDemo, playedFromMs, startPlayedDemo } from './played-demo';

/** `npm run pictures` draws them anew; whoever does looks at each before it is kept. */
const renew = process.env['EBBLINE_PICTURES'] === 'renew';
const calmAtS = 100;
const floodAtS = 190;
const happens = [
  { fault: 'cutServerHose', unit: 'N3', branch: 'r5', size: 'usual' },
  { fault: 'facilityFlowLost', unit: 'N1', size: 'large' },
].map((command) => ({ atS: calmAtS + 10, command: { ...command, action: 'start' } }));

if (renew || (await drawsLettersAlike())) foundNow('pictures', 'here');

describe('two pictures', () => {
  const drawn = (inked: number): Buffer => {
    const png = new PNG({ width: 100, height: 100 });
    png.data.fill(255);
    for (let at = 0; at < inked; at += 1) png.data.set([0, 0, 0, 255], (at * 3 + 30 * 100) * 4);
    return PNG.sync.write(png);
  };

  test('are the same where a few pixels differ, and not where a word does', () => {
    expect(differenceOf(drawn(0), drawn(3))).toBeNull();
    const word = PNG.sync.read(drawn(0));
    for (let y = 10; y < 20; y += 1) for (let x = 10; x < 20; x += 1) word.data.set([0, 0, 0, 255], (y * 100 + x) * 4);
    expect(differenceOf(drawn(0), PNG.sync.write(word))).toMatch(/differs in \d+ pixels/);
    expect(differenceOf(drawn(0), PNG.sync.write(new PNG({ width: 99, height: 100 })))).toMatch(/99 × 100/);
  });
});

suiteNeeding(['chromium', 'pictures'], 'the kept pictures', () => {
  const keep = stopAfterAll();

  test('show what the screens show, of the same night', async () => {
    const demo = keep(await startPlayedDemo(happens, floodAtS + 10));
    const faults: string[] = [];
    await demo.playTo(calmAtS);
    for (const picture of keptPictures.calm) faults.push(...(await check(demo, picture)));
    await demo.playTo(floodAtS);
    await until(async () => (await demo.ebbline.alarms()).some(({ id }) => id === 'N3:AIR-1'), { what: 'AIR-1' });
    for (const picture of keptPictures.flood) faults.push(...(await check(demo, picture)));
    if (renew) await writeFile(new URL('letters.png', pictureFolder), await letterProbe());
    expect(faults).toEqual([]);
  }, 900_000);

  async function check(demo: PlayedDemo, picture: KeptPicture): Promise<readonly string[]> {
    const taken = await take(demo, picture);
    const file = new URL(`${picture.name}.png`, pictureFolder);
    if (renew) {
      await mkdir(pictureFolder, { recursive: true });
      await writeFile(file, taken);
      return [];
    }
    const kept = await readFile(file);
    const difference = differenceOf(kept, taken);
    if (difference === null) return [];
    const beside = join(tmpdir(), `ebbline-${picture.name}`);
    await writeFile(`${beside}.png`, taken);
    await writeFile(`${beside}-marked.png`, markedDifference(kept, taken));
    return [`${picture.name} ${difference}; see ${beside}.png; if it is meant: npm run pictures, and look at them`];
  }
});

/** The page's clocks stand still, as the plant's does: whoever draws it, and whenever, draws the same. */
async function take(demo: PlayedDemo, picture: KeptPicture): Promise<Buffer> {
  const { path, shown, colorScheme, width, height } = picture;
  const { page, stop } = await openPage(demo.ebbline.url, { colorScheme, viewport: { width, height } });
  try {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await page.clock.setFixedTime(playedFromMs);
    await page.addInitScript(() => {
      performance.now = () => 60_000;
    });
    await page.goto(`${demo.ebbline.url}${path}`);
    await page.locator(shown).first().waitFor();
    await page.evaluate(() => document.fonts.ready.then(() => undefined));
    // What is fetched beside the feed, such as the trails of an hour.
    await page.waitForLoadState('networkidle');
    // The address of the broker is another at each start.
    const shot = (): Promise<Buffer> =>
      page.screenshot({ mask: [page.getByTestId('broker')], maskColor: '#808080', animations: 'disabled' });
    let before = await shot();
    return await until(
      async () => {
        const next = await shot();
        const same = before.equals(next);
        before = next;
        return same ? next : null;
      },
      { everyMs: 300, what: `a picture of ${path} that stands still` },
    );
  } finally {
    await stop();
  }
}
