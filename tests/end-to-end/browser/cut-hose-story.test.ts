import type { Alarm, JournalRow } from '@ebbline/shared/contract/alarm';
import { expect, test } from 'vitest';
import { recordTelemetry } from '../../../simulator/src/scenario/record-telemetry';
import { connectClient, startBroker } from '../../helpers/broker';
import { startEbbline } from '../../helpers/ebbline';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { dataFolder } from '../data-folder';
import { openPage } from './open-page';

/** Second of the recording at which the hose is cut. */
const cutAtS = 100;

suiteNeeding(['chromium'], 'from a cut hose to its acknowledgement', () => {
  const keep = stopAfterAll();

  test('an operator is told the rack and the first action, acknowledges by name, and sees what the server confirmed', async () => {
    const data = keep(await dataFolder());
    const broker = keep(await startBroker());
    const env = { EBBLINE_CLOCK: 'source', EBBLINE_SIMULATOR: 'off', EBBLINE_MQTT_URL: broker.url };
    const ebbline = keep(await startEbbline({ data: data.path, env }));
    const { client } = keep(await connectClient(broker));
    const { page, troubles } = keep(await openPage(ebbline.url));

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

    await page.getByRole('link', { name: /^Alarms/ }).click();
    const card = page.getByTestId(`alarm-${alarm.id}`);
    await card.getByText(alarm.action).waitFor();
    await card.getByRole('button', { name: 'Acknowledge…' }).click();
    await card.getByLabel('Your name').fill('Ada Nightwatch');
    await card.getByLabel(/^Comment/).fill('on my way to the rack');
    await card.getByRole('button', { name: 'Acknowledge', exact: true }).click();
    await card.getByTestId('acknowledged-by').getByText('Ada Nightwatch').waitFor();

    const acknowledged = (await ebbline.alarms()).find(({ id }) => id === alarm.id);
    expect(acknowledged).toMatchObject({ acknowledgedBy: 'Ada Nightwatch' });
    const { rows } = await ebbline.get<{ rows: JournalRow[] }>('/api/alarms/journal');
    const acts = rows.filter((line) => line.alarm === alarm.id && line.actor === 'Ada Nightwatch');
    expect(acts.map(({ reason }) => reason)).toEqual(['on my way to the rack']);
    expect(troubles).toEqual([]);
  });
});
