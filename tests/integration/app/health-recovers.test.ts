import { join } from 'node:path';
import Database from 'libsql';
import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { Health } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { startInfluxd } from '../../helpers/influxd';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { cuttableLink } from '../mqtt-intake/cuttable-link';
import { postJson, startApp, type RunningApp } from './running-app';
import { connectSender, type Sender } from './telemetry';

const keep = stopAfterEach();
const health = (app: RunningApp): Promise<Health> => app.get<Health>('/api/health');

/** The reason of this code, as soon as health tells it. */
const reason = (app: RunningApp, code: string): Promise<string> =>
  until(async () => (await health(app)).reasons.find((one) => one.code === code)?.message, {
    everyMs: 50,
    what: code,
  });
const well = (app: RunningApp): Promise<Health> =>
  until(async () => ((await health(app)).status === 'ok' ? health(app) : null), { everyMs: 50, what: 'health ok' });

describe('a journal that another program holds', () => {
  it('is told in health with what to do; alarms show as not recorded, actions are refused, and both end with it', async () => {
    const app = keep(await startApp({ variables: { EBBLINE_CLOCK: 'source' } }));
    const sender = keep(await connectSender(app.mqttUrl));
    const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);
    const minute = async (from: number, leak: string): Promise<void> => {
      for (let second = from; second < from + 30; second++) await sender.m1(startMs + second * 1000, { leak });
    };
    await minute(0, 'dry');
    await well(app);

    // A token is written down too, so it is asked for before.
    await app.signIn.proof('Ines');
    const other = new Database(join(app.dataFolder, 'journal.sqlite'), { timeout: 0 });
    keep({ stop: () => void other.close() });
    other.exec('BEGIN IMMEDIATE');
    await minute(30, 'wet');
    const message = await reason(app, 'JOURNAL_FAILING');
    expect(message).toMatch(/not recorded/);
    expect(message).toMatch(/permissions of the data folder/);
    expect((await health(app)).status).toBe('degraded');
    const water = async (): Promise<Alarm | undefined> =>
      (await app.get<{ alarms: Alarm[] }>('/api/alarms')).alarms.find(({ entry }) => entry === 'WATER-1');
    const unrecorded = await until(water);
    expect(unrecorded.recorded).toBe(false);
    const itself = async (): Promise<Alarm | undefined> =>
      (await app.get<{ alarms: Alarm[] }>('/api/alarms')).alarms.find(({ entry }) => entry === 'SYS-2');
    // The program looks at itself once a second of the machine, and the alarm's delay runs by the plant's time.
    let next = 60;
    const raised = await until(
      async () => {
        await sender.m1(startMs + next++ * 1000, { leak: 'wet' });
        return itself();
      },
      { everyMs: 50, what: 'SYS-2' },
    );
    expect(raised).toMatchObject({ unit: null, hall: null, where: 'this program', recorded: false });
    const act = (): Promise<Response> =>
      app.send(`/api/alarms/${encodeURIComponent(unrecorded.id)}/acknowledge`, postJson({ operator: 'Ines' }));
    expect((await act()).status).toBe(503);

    other.exec('ROLLBACK');
    await well(app);
    expect((await until(water)).recorded).not.toBe(false);
    expect((await itself())?.recorded).not.toBe(false);
    expect((await act()).status).toBe(200);
    expect(app.faults).toEqual([]);
  });
});

suiteNeeding(['influxdb'], 'a history server that is lost', () => {
  it('is told in health with what to do, and health is well again once it is back', async () => {
    const server = keep(await startInfluxd());
    const link = keep(await cuttableLink(Number(new URL(server.url).port)));
    const app = keep(await startApp({ variables: { EBBLINE_INFLUX_URL: influxUrl(server.url, link.url) } }));
    const sender: Sender = keep(await connectSender(app.mqttUrl));
    const send = (): Promise<void> => sender.m1(Date.now());
    await send();
    await well(app);

    link.allow(false);
    link.cut();
    const message = await until(
      async () => {
        await send();
        return (await health(app)).reasons.find(({ code }) => code === 'HISTORY_FAILING')?.message;
      },
      { everyMs: 200, what: 'the reason' },
    );
    expect(message).toMatch(/tried again/);
    expect((await health(app)).status).toBe('degraded');
    link.allow(true);
    await until(
      async () => {
        await send();
        return (await health(app)).status === 'ok';
      },
      { everyMs: 200, what: 'health ok' },
    );
  });
});

const influxUrl = (server: string, link: string): string => {
  const url = new URL(server);
  url.port = new URL(link.replace('mqtt:', 'http:')).port;
  return url.toString();
};
