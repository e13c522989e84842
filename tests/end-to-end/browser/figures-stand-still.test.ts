import { beforeAll, expect, test } from 'vitest';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { openPage } from './open-page';
import { type SmallHall, startSmallHall } from './small-hall';

suiteNeeding(['chromium'], 'a number that changes', () => {
  const keep = stopAfterAll();
  let hall: SmallHall;
  beforeAll(async () => {
    hall = keep(await startSmallHall());
  });

  test('has figures of one width in the built page, keeps the room of a digit that went, and is read in the chosen units', async () => {
    const { page, troubles } = keep(await openPage(hall.ebbline.url));
    await page.goto(`${hall.ebbline.url}/halls/north`);
    const strip = page.getByTestId('strip-m1-bar');
    await strip.waitFor();

    // Figures of each weight, as the program's own style sheet and fonts have them after the build.
    const widths = await page.evaluate(async () => {
      await document.fonts.ready;
      const of = async (weight: number): Promise<number[]> => {
        await document.fonts.load(`${weight} 16px Barlow`);
        const probe = document.createElement('span');
        probe.style.fontWeight = String(weight);
        document.body.append(probe);
        const found = Array.from('0123456789').map((digit) => {
          probe.textContent = digit.repeat(10);
          return probe.getBoundingClientRect().width;
        });
        probe.remove();
        return found;
      };
      return Promise.all([400, 500, 600].map(of));
    });
    for (const weight of widths) {
      expect(weight[0]).toBeGreaterThan(0);
      expect(Math.max(...weight) - Math.min(...weight)).toBeLessThan(0.05);
    }

    // A place that held three digits keeps them: what stands behind two of them does not move.
    const right = await page.evaluate(() => {
      const place = document.createElement('span');
      place.className = 'quantity';
      document.body.append(place);
      const at = (text: string, pad: string | null): number => {
        place.textContent = text;
        if (pad === null) delete place.dataset['pad'];
        else place.dataset['pad'] = pad;
        return place.getBoundingClientRect().width;
      };
      const seen = [at('−118.4 kPa', null), at('18.4 kPa', '−1'), at('7.4 kPa', '−11')];
      place.remove();
      return seen;
    });
    expect(Math.max(...right) - Math.min(...right)).toBeLessThan(0.05);

    const text = async (): Promise<string> => (await page.locator('main').textContent()) ?? '';
    expect(await text()).toMatch(/kPa/);
    await page.getByLabel('US: psi, °F, gpm').check();
    await until(async () => /psia/.test(await text()), { everyMs: 50, what: 'the hall in US units' });
    expect(await text()).not.toMatch(/kPa|L\/min|°C/);
    await page.reload();
    await strip.waitFor();
    expect(await text()).not.toMatch(/kPa|L\/min|°C/);
    expect(troubles).toEqual([]);
  });
});
