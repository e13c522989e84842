import type { Alarm, JournalRow } from '@ebbline/shared/contract/alarm';
import { expect, test } from 'vitest';
import { recordTelemetry } from '../../../simulator/src/scenario/record-telemetry';
import { connectClient, startBroker } from '../../helpers/broker';
import { startEbbline } from '../../helpers/ebbline';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { dataFolder } from '../data-folder';
import { openPage } from './open-page';
import { columnsOf, near, pictureOf } from './picture';
import { tokenColour } from './token-colour';

/** Second of the recording at which the hose is cut. */
const cutAtS = 100;

suiteNeeding(['chromium'], 'from a cut hose to its acknowledgement, a permit and the trend', () => {
  const keep = stopAfterAll();

  test('an operator is told the rack and the first action, acknowledges, opens and closes a permit, looks at the trend, and sees what the server confirmed', async () => {
    const data = keep(await dataFolder());
    const broker = keep(await startBroker());
    const env = { EBBLINE_CLOCK: 'source', EBBLINE_SIMULATOR: 'off', EBBLINE_MQTT_URL: broker.url };
    const ebbline = keep(await startEbbline({ data: data.path, env }));
    const { client } = keep(await connectClient(broker));
    const { browser, page, troubles } = keep(await openPage(ebbline.url));

    // The plant's own time goes as fast as its messages are sent: nobody sleeps.
    const telemetry = recordTelemetry({
      seed: 1,
      startMs: Date.UTC(2026, 2, 3, 2),
      seconds: 240,
      schedule: [
        { atS: cutAtS, command: { fault: 'cutServerHose', unit: 'N3', branch: 'r5', size: 'usual', action: 'start' } },
      ],
    });
    const playUntil = async (done: (sourceMs: number) => Promise<boolean> | boolean): Promise<void> => {
      for (let next = telemetry.next(); next.done !== true; next = telemetry.next()) {
        const { topic, payload, sourceMs } = next.value;
        await client.publishAsync(topic, payload, { qos: 1 });
        if (await done(sourceMs)) return;
      }
      throw new Error('the recording ended before what was waited for');
    };

    await playUntil((sourceMs) => sourceMs >= Date.UTC(2026, 2, 3, 2) + (cutAtS - 1) * 1000);
    const row = page.getByTestId('loop-N3');
    await page.getByTestId('strip-N3-bar').waitFor();
    expect((await ebbline.health()).clock.kind).toBe('source');
    // A minute and a half in good order: nothing shines while nothing needs a person.
    expect(await ebbline.alarms()).toEqual([]);

    let found: Alarm | undefined;
    let sent = 0;
    await playUntil(async () => {
      // Asking once a second of the plant's time is enough.
      if (sent++ % 12 === 0)
        found = (await ebbline.alarms()).find(({ entry, unit }) => entry === 'AIR-1' && unit === 'N3');
      return found !== undefined;
    });
    const alarm = found;
    if (alarm === undefined) throw new Error('AIR-1 was not raised');
    expect(alarm.where).toMatch(/5/);
    await row.getByText(alarm.title).waitFor();
    // The Hall has room for the first sentence; the card has all.
    await row.getByText(`${alarm.action.split('. ')[0] ?? ''}.`).waitFor();

    // From the Hall to the loop, and from there to where it is acknowledged.
    await row.getByRole('link', { name: 'Unit N3', exact: true }).click();
    const aside = page.locator('.loop-aside');
    await aside.getByTestId(`alarm-${alarm.id}`).getByText(alarm.action).waitFor();
    await page.getByText('Along the water’s way').waitFor();
    await aside.getByRole('link', { name: 'Acknowledge on the Alarms screen' }).click();
    const card = page.getByTestId(`alarm-${alarm.id}`);
    await card.getByText(alarm.action).waitFor();
    await card.getByRole('button', { name: 'Acknowledge…' }).click();
    // Nobody is signed in: what is typed stays while one click on the demo signs in, in place.
    await card.getByLabel(/^Comment/).fill('on my way to the rack');
    expect(await card.getByRole('button', { name: 'Acknowledge', exact: true }).isDisabled()).toBe(true);
    await card.getByLabel('Your name').fill('Ada Nightwatch');
    await card.getByRole('button', { name: 'Sign in', exact: true }).click();
    await card.getByText('as Ada Nightwatch').waitFor();
    expect(await card.getByLabel(/^Comment/).inputValue()).toBe('on my way to the rack');
    await card.getByRole('button', { name: 'Acknowledge', exact: true }).click();
    await card.getByTestId('acknowledged-by').getByText('Ada Nightwatch').waitFor();

    // The rack is to be worked on: a permit is opened and closed where the loop is. Who acts is known by now.
    await page.getByRole('link', { name: 'North hall' }).click();
    await row.getByRole('link', { name: 'Unit N3', exact: true }).click();
    await aside.getByRole('button', { name: 'Open a permit…' }).click();
    const form = aside.getByRole('form', { name: 'Open a permit on Unit N3' });
    await form.getByLabel('What is opened').selectOption({ label: 'Rack 5' });
    await form.getByLabel('Expected in-leak, L/min free air').fill('150');
    await form.getByText('as Ada Nightwatch').waitFor();
    await form.getByRole('button', { name: 'Open permit' }).click();
    await aside.getByText('Permit opened for Rack 5, confirmed by the server.').waitFor();
    const permit = aside.locator('.permit');
    await permit.getByText('up to 150.0').waitFor();
    await permit.getByRole('button', { name: 'Close permit…' }).click();
    await permit.getByLabel(/^Comment/).fill('hose is back in its place');
    await permit.getByRole('button', { name: 'Close permit', exact: true }).click();
    await permit.getByText('Closed. Confirmed by the server.').waitFor();

    // The trend begins with the unit that was looked at, and is moved by keyboard and by pointer.
    await page.getByRole('link', { name: 'Trends', exact: true }).click();
    const air = page.getByTestId('key-N3:vacuumMargin');
    await air.getByText(/kPa/).first().waitFor();
    expect(await page.locator('.lane-title').allInnerTexts()).toEqual(
      expect.arrayContaining([expect.stringMatching(/^pressure difference, kPa/), expect.stringMatching(/^power, kW/)]),
    );
    await page.getByRole('button', { name: '15 min' }).click();
    const lane = page.locator('.lane-chart').first();
    const ofLine = near(await tokenColour(page, '--line-1'), 40);
    const inked = async (): Promise<number> => {
      const picture = await pictureOf(browser, lane);
      const rows = Array.from({ length: picture.height }, (_, y) => y + picture.y);
      return rows.reduce((sum, y) => sum + columnsOf(picture, y, ofLine).length, 0);
    };
    await until(async () => (await inked()) > 40, { everyMs: 200, what: 'the line of the vacuum margin' });
    const shownSeconds = async (): Promise<number> => {
      await page.waitForURL(/from=/);
      const asked = new URL(page.url()).searchParams;
      return (Date.parse(asked.get('to') ?? '') - Date.parse(asked.get('from') ?? '')) / 1000;
    };
    await page.locator('.lanes').focus();
    await page.keyboard.press('+');
    expect(await shownSeconds()).toBe(450);
    const before = new URL(page.url()).searchParams.get('from');
    await page.keyboard.press('ArrowLeft');
    await page.waitForURL((url) => url.searchParams.get('from') !== before);
    expect(await shownSeconds()).toBe(450);
    await page.keyboard.press('End');
    await page.waitForURL(/last=450/);
    await page.getByText('moves with the time').waitFor();
    const box = await lane.boundingBox();
    if (box === null) throw new Error('the lane is not shown');
    await page.mouse.move(box.x + box.width * 0.5, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.8, box.y + box.height / 2, { steps: 5 });
    await page.mouse.up();
    expect(await shownSeconds()).toBeGreaterThan(60);
    expect(await shownSeconds()).toBeLessThan(300);

    const acknowledged = (await ebbline.alarms()).find(({ id }) => id === alarm.id);
    expect(acknowledged).toMatchObject({ acknowledgedBy: 'Ada Nightwatch' });
    const { rows } = await ebbline.get<{ rows: JournalRow[] }>('/api/alarms/journal');
    const acts = rows.filter((line) => line.alarm === alarm.id && line.actor === 'Ada Nightwatch');
    expect(acts.map(({ reason }) => reason)).toEqual(['on my way to the rack']);
    const ofPermit = rows.filter((line) => line.alarm?.startsWith('permit/') === true && line.actor !== null);
    expect(ofPermit.map(({ actor }) => actor)).toEqual(['Ada Nightwatch', 'Ada Nightwatch']);
    expect(ofPermit.at(-1)?.reason).toContain('hose is back in its place');
    await page.getByRole('link', { name: /^Alarms/ }).click();
    await page.getByRole('link', { name: 'Journal', exact: true }).click();
    const journal = page.locator('.journal-rows');
    await journal.getByText('hose is back in its place').waitFor();
    expect(await journal.innerText()).toMatch(/permit · Rack 5/);
    expect(troubles).toEqual([]);
  });
});
