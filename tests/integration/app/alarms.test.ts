import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { AlarmsFrame, HallFrame } from '@ebbline/shared/contract/live-feed';
import { describe, expect, it } from 'vitest';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { connectScreen, postJson, startApp, type RunningApp } from './running-app';
import { connectSender, type Sender } from './telemetry';

const keep = stopAfterEach();
const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);

const standing = async (app: RunningApp): Promise<Alarm[]> =>
  (await app.get<{ alarms: Alarm[] }>('/api/alarms')).alarms;

/** Water found, told once a second for a minute: on the source clock that is a minute. */
async function findWater(sender: Sender): Promise<void> {
  for (let second = 0; second < 60; second++)
    await sender.m1(startMs + second * 1000, { leak: second < 2 ? 'dry' : 'wet' });
}

const water = async (app: RunningApp): Promise<Alarm> =>
  until(async () => (await standing(app)).find(({ entry }) => entry === 'WATER-1'), { what: 'the alarm' });

describe('an alarm', () => {
  it('is raised by the source clock, shown on every screen, and acknowledged by a name', async () => {
    const app = keep(await startApp({ variables: { EBBLINE_CLOCK: 'source' } }));
    const sender = keep(await connectSender(app.mqttUrl));
    const hall = keep(connectScreen(app.url));
    hall.show({ screen: 'hall', hall: 'north' });
    const list = keep(connectScreen(app.url));
    list.show({ screen: 'alarms' });
    await findWater(sender);
    const alarm = await water(app);
    expect(alarm).toMatchObject({ unit: 'm1', state: 'unacknowledged', priority: 1, acknowledgedBy: null });
    expect(Date.parse(alarm.since)).toBeGreaterThanOrEqual(startMs);
    expect(Date.parse(alarm.since)).toBeLessThan(startMs + 60_000);
    await until(() => (list.frames.at(-1) as AlarmsFrame | undefined)?.alarms.some(({ id }) => id === alarm.id));
    await until(() => {
      const frame = hall.frames.at(-1) as HallFrame | undefined;
      return frame?.loops.find(({ unit }) => unit === 'm1')?.worst?.entry === 'WATER-1' && frame.standing[1] > 0;
    });

    const path = `/api/alarms/${encodeURIComponent(alarm.id)}/acknowledge`;
    const done = await app.send(path, postJson({ operator: ' Ines ', comment: 'on my way' }));
    expect(done.status).toBe(200);
    expect(await done.json()).toMatchObject({ id: alarm.id, acknowledgedBy: 'Ines' });
    const again = await app.send(path, postJson({ operator: 'Otto' }));
    expect(again.status).toBe(409);
    expect(await again.json()).toMatchObject({
      code: 'ALARM_ALREADY_ACKNOWLEDGED',
      acknowledgedBy: 'Ines',
      acknowledgedAt: expect.stringMatching(/^2031-05-06T/) as unknown,
    });
    await until(() =>
      (list.frames.at(-1) as AlarmsFrame | undefined)?.alarms.some(
        ({ id, acknowledgedBy }) => id === alarm.id && acknowledgedBy === 'Ines',
      ),
    );
    const journal = await app.get<{ rows: { actor: string | null; reason: string | null; station: string | null }[] }>(
      '/api/alarms/journal',
    );
    expect(journal.rows.filter(({ actor }) => actor === 'Ines')).toMatchObject([
      { reason: 'on my way', station: '127.0.0.1' },
    ]);
    expect(app.faults).toEqual([]);
  });

  it('stands as it was after a restart, before any message', async () => {
    const data = keep(await temporaryFolder());
    const variables = { EBBLINE_CLOCK: 'source' };
    const first = await startApp({ variables, dataFolder: data.path });
    const sender = await connectSender(first.mqttUrl);
    await findWater(sender);
    const before = await water(first);
    await sender.stop();
    await first.stop();
    const second = keep(await startApp({ variables, dataFolder: data.path }));
    expect((await standing(second)).find(({ id }) => id === before.id)).toEqual(before);
    const path = `/api/alarms/${encodeURIComponent(before.id)}/acknowledge`;
    expect((await second.send(path, postJson({ operator: 'Ines' }))).status).toBe(200);
  });
});
