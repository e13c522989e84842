import { beforeAll, expect, test } from 'vitest';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { openPage } from './open-page';
import { type SmallHall, startSmallHall } from './small-hall';

suiteNeeding(['chromium'], 'the sound of alarms in a browser', () => {
  const keep = stopAfterAll();
  let hall: SmallHall;
  beforeAll(async () => {
    hall = keep(await startSmallHall());
    hall.change({ leak: 'wet' });
    const water = async () => (await hall.ebbline.alarms()).find(({ entry }) => entry === 'WATER-1');
    await until(water, { everyMs: 100, what: 'the alarm' });
  });

  test('is off until someone clicks, comes by priority, and is silenced from the keyboard without acknowledging', async () => {
    const { page, troubles } = keep(await openPage(hall.ebbline.url));
    await page.addInitScript(() => {
      const heard: number[] = [];
      Object.assign(window, { heard });
      const create = BaseAudioContext.prototype.createOscillator;
      BaseAudioContext.prototype.createOscillator = function () {
        const tone = create.call(this);
        const start = tone.start.bind(tone);
        tone.start = (when) => {
          heard.push(tone.frequency.value);
          start(when);
        };
        return tone;
      };
    });
    await page.goto(`${hall.ebbline.url}/alarms`);
    const heard = () => page.evaluate(() => (window as unknown as { heard: number[] }).heard);
    await page.getByText('Sound is off – click').waitFor();
    await until(async () => /^\(\d+\) /.test(await page.title()), { what: 'the count in the title' });
    expect(await heard()).toEqual([]);

    await page.locator('main').click({ position: { x: 3, y: 3 } });
    const silence = page.getByTestId('silence');
    await silence.waitFor();
    expect(await page.getByTestId('sound-blocked').count()).toBe(0);
    // The pattern of priority 1, in the order of its tones.
    await until(async () => (await heard()).length >= 5);
    expect((await heard()).slice(0, 5)).toEqual([880, 1175, 880, 1175, 880]);
    expect(await silence.textContent()).toContain('priority 1 sounds; it stays unacknowledged');

    await silence.focus();
    await page.keyboard.press('Enter');
    await until(async () => (await silence.count()) === 0, { what: 'silence' });
    const water = (await hall.ebbline.alarms()).find(({ entry }) => entry === 'WATER-1');
    expect(water?.acknowledgedBy).toBeNull();

    await page.locator('.sound summary').focus();
    await page.keyboard.press('Enter');
    await page.getByTestId('volume').selectOption('off');
    await page.reload();
    await page.locator('.sound summary', { hasText: 'Sound off' }).waitFor();
    expect(await page.getByTestId('sound-blocked').count()).toBe(0);
    expect(troubles).toEqual([]);
  });
});
