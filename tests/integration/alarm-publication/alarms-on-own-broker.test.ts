import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Intake } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { hashPassword } from '../../../backend/src/connections/people/password-hash';
import { connectClient } from '../../helpers/broker';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { smallSiteFile, startApp } from '../app/running-app';
import { connectSender } from '../app/telemetry';
import { listen, seconds } from './outside-listener';

const keep = stopAfterEach();
const topic = 'ebbline/small/alarms/m1:WATER-1';

describe('alarms at the program’s own broker', () => {
  it('are told without any setting, and written by nobody else', async () => {
    const app = keep(await startApp({ variables: { EBBLINE_CLOCK: 'source' } }));
    const listener = keep(await listen(app.mqttUrl, 'ebbline/small/alarms/+'));
    const sender = keep(await connectSender(app.mqttUrl));
    await seconds(sender, 0, 20, 'wet');
    await until(() => listener.of('WATER-1').length === 1);
    const { client } = keep(await connectClient({ url: app.mqttUrl }));
    let closed = false;
    client.on('close', () => (closed = true));
    client.publish(topic, '', { qos: 1, retain: true });
    await until(() => closed, { what: 'the hang-up' });
    await seconds(sender, 20, 22, 'wet');
    expect(listener.of('WATER-1')).toEqual(['unacknowledged']);
  });

  it('are not told where they are turned off', async () => {
    const app = keep(await startApp({ variables: { EBBLINE_CLOCK: 'source', EBBLINE_ALARM_TOPIC: 'off' } }));
    const listener = keep(await listen(app.mqttUrl, 'ebbline/small/alarms/+'));
    const sender = keep(await connectSender(app.mqttUrl));
    await seconds(sender, 0, 20, 'wet');
    await until(async () => (await app.get<{ alarms: { id: string }[] }>('/api/alarms')).alarms.length > 0);
    // Their topics are nobody's then: what comes by them comes from others.
    await sender.raw(topic, '');
    await until(() => listener.heard.length > 0);
    expect(listener.of('WATER-1')).toEqual(['cleared']);
  });

  it('are read by whom the access file lets read them, and written by no one of it', async () => {
    const folder = keep(await temporaryFolder());
    const hash = await hashPassword('s3cret-of-reader', { memoryKib: 8192, passes: 1, lanes: 1 });
    const file = join(folder.path, 'access.yaml');
    const user = (name: string, publish: string, subscribe: string) =>
      `  - { name: ${name}, password: '${hash}', publish: ['${publish}'], subscribe: ['${subscribe}'] }\n`;
    writeFileSync(file, `users:\n${user('reader', 'x', 'ebbline/+/alarms/#')}${user('gateway', '#', 'x')}`);
    const variables = { EBBLINE_CLOCK: 'source', EBBLINE_BROKER_ACCESS_FILE: file };
    const app = keep(await startApp({ variables }));
    const as = (username: string) => ({ username, password: 's3cret-of-reader' });
    const listener = keep(await listen(app.mqttUrl, 'ebbline/+/alarms/#', as('reader')));
    const gateway = keep(await connectClient({ url: app.mqttUrl }, as('gateway'))).client;
    let closed = false;
    gateway.on('close', () => (closed = true));
    gateway.publish(topic, 'all is well', { qos: 1, retain: true });
    await until(() => closed, { what: 'the hang-up' });
    expect(listener.heard.filter((one) => one.topic === topic)).toEqual([]);
  });

  it('are never taken in as telemetry, whatever the site file subscribes to', async () => {
    const folder = keep(await temporaryFolder());
    const site = join(folder.path, 'site.yaml');
    const text = readFileSync(smallSiteFile, 'utf8');
    writeFileSync(site, text.replace('intake:\n', "intake:\n  subscriptions: ['#']\n"));
    const app = keep(await startApp({ variables: { EBBLINE_CLOCK: 'source', EBBLINE_SITE: site } }));
    const listener = keep(await listen(app.mqttUrl, 'ebbline/small/alarms/+'));
    const sender = keep(await connectSender(app.mqttUrl));
    await seconds(sender, 0, 20, 'wet');
    await until(() => listener.of('WATER-1').length === 1);
    await sender.raw('nobody/knows', '1');
    const unknown = async () =>
      (await app.get<Intake>('/api/intake')).refusals.find(({ code }) => code === 'TOPIC_UNKNOWN');
    await until(async () => ((await unknown())?.count ?? 0) > 0);
    expect(JSON.stringify(await unknown())).not.toContain('alarms');
  });
});
