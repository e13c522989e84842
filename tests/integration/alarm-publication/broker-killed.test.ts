import { alarmPublicationSchema } from '@ebbline/shared/contract/alarm-publication';
import { expect, it } from 'vitest';
import { connectClient } from '../../helpers/broker';
import { launchMosquitto } from '../../helpers/mosquitto';
import { pathOf, suiteNeeding } from '../../helpers/requirements';
import { adminName } from '../../helpers/sign-in';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { startApp } from '../app/running-app';
import { connectSender } from '../app/telemetry';
import { act, listen, seconds } from './outside-listener';

const keep = stopAfterEach();
const filter = 'ebbline/small/alarms/#';
const id = 'm1:WATER-1';

suiteNeeding(['mosquitto'], 'alarms and a broker that is killed', () => {
  it('stand at the broker again that came back empty, with what happened meanwhile', async () => {
    const broker = keep(await launchMosquitto(pathOf('mosquitto')));
    const variables = { EBBLINE_CLOCK: 'source', EBBLINE_MQTT_URL: broker.url, EBBLINE_ALARM_TOPIC: 'ebbline' };
    const app = keep(await startApp({ variables }));
    const sender = await connectSender(broker.url);
    const first = await listen(broker.url, filter);
    await seconds(sender, 0, 20, 'wet');
    await until(() => first.of('WATER-1').length === 1);
    await first.stop();
    await sender.stop();
    await broker.kill();
    await act(app, id, 'acknowledge');
    await broker.restart();
    const { client } = keep(await connectClient(broker));
    const heard: string[] = [];
    client.on('message', (topic, payload) => {
      if (topic.endsWith(id)) heard.push(payload.toString('utf8'));
    });
    await client.subscribeAsync(filter, { qos: 1 });
    await until(() => heard.length > 0);
    const told = alarmPublicationSchema.parse(JSON.parse(heard[0] ?? ''));
    expect(told.alarm).toMatchObject({ state: 'acknowledged', acknowledgedBy: 'Ines' });
  });

  it('are told as set aside while they are, and as calling once they are brought back', async () => {
    const broker = keep(await launchMosquitto(pathOf('mosquitto')));
    const variables = { EBBLINE_CLOCK: 'source', EBBLINE_MQTT_URL: broker.url, EBBLINE_ALARM_TOPIC: 'ebbline' };
    const app = keep(await startApp({ variables }));
    const sender = keep(await connectSender(broker.url));
    const listener = keep(await listen(broker.url, filter));
    await seconds(sender, 0, 20, 'wet');
    await until(() => listener.of('WATER-1').length === 1);
    const asAdmin = async (action: string, body: object): Promise<void> => {
      const headers = { ...(await app.signIn.admin()), 'content-type': 'application/json' };
      const request = { method: 'POST', headers, body: JSON.stringify({ operator: adminName, ...body }) };
      const reply = await fetch(`${app.url}/api/alarms/${encodeURIComponent(id)}/${action}`, request);
      expect(reply.ok).toBe(true);
    };
    await asAdmin('shelve', { reason: 'rope is being dried', minutes: 5 });
    await until(() => listener.of('WATER-1').length === 2);
    const told = listener.heard.filter(({ topic }) => topic.endsWith(id)).map((one) => one.told);
    expect(told[1]?.setAside).toMatchObject({ mode: 'shelved', by: adminName, reason: 'rope is being dried' });
    expect(told[1]?.setAside?.until).toMatch(/^2031-05-06T/);
    await asAdmin('unshelve', {});
    await until(() => listener.of('WATER-1').length === 3);
    const back = listener.heard.filter(({ topic }) => topic.endsWith(id)).at(-1)?.told;
    expect(back).toMatchObject({ alarm: { state: 'unacknowledged' }, setAside: null });
  });
});
