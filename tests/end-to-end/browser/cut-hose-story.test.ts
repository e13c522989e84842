import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { expect, test } from 'vitest';
import { connectClient } from '../../helpers/broker';
import { startEbbline } from '../../helpers/ebbline';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { dataFolder } from '../data-folder';
import { openPage } from './open-page';

suiteNeeding(['chromium'], 'from a cut hose to its acknowledgement', () => {
  const keep = stopAfterAll();

  test('an operator is told the rack and the first action, acknowledges by name, and sees what the server confirmed', async () => {
    const data = keep(await dataFolder());
    const env = { EBBLINE_CLOCK: 'source', EBBLINE_SIMULATOR: 'on', EBBLINE_SIMULATOR_SPEED: '20' };
    const ebbline = keep(await startEbbline({ data: data.path, env }));
    const { page, troubles } = keep(await openPage(ebbline.url));
    const row = page.getByTestId('loop-N3');
    await page.getByTestId('strip-N3-bar').waitFor();
    expect(await page.getByText('source clock', { exact: false }).count()).toBeGreaterThan(0);
    // Two minutes of the plant's own time: nothing shines while nothing needs a person.
    const startMs = Date.parse((await ebbline.health()).clock.now ?? '');
    await until(async () => Date.parse((await ebbline.health()).clock.now ?? '') > startMs + 120_000, {
      everyMs: 100,
      what: 'two minutes',
    });
    expect(await ebbline.alarms()).toEqual([]);

    const { broker } = await ebbline.health();
    const { client } = keep(await connectClient({ url: `mqtt://${broker.address}` }));
    const cut = { fault: 'cutServerHose', unit: 'N3', branch: 'r5', size: 'usual', action: 'start' };
    await client.publishAsync('ebbline-simulator/command', JSON.stringify(cut), { qos: 1 });

    const alarm = await until(
      async () => (await ebbline.alarms()).find(({ entry, unit }) => entry === 'AIR-1' && unit === 'N3'),
      {
        everyMs: 50,
        what: 'AIR-1 on N3',
      },
    );
    expect(alarm.where).toMatch(/5/);
    await row.getByText(alarm.title).waitFor();
    await row.getByText(alarm.action).waitFor();

    await page.getByRole('link', { name: /^Alarms/ }).click();
    const card = page.getByTestId(`alarm-${alarm.id}`);
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
