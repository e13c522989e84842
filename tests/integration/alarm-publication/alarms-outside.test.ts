import { describe, expect, it } from 'vitest';
import { startEmbeddedBroker, startMosquitto, type TestBroker } from '../../helpers/broker';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { startApp } from '../app/running-app';
import { connectSender } from '../app/telemetry';
import { cuttableLink } from '../mqtt-intake/cuttable-link';
import { act, judgedTo, listen, retainedAt, seconds } from './outside-listener';

const keep = stopAfterEach();
const filter = 'plant/alarms/small/alarms/#';
const id = 'm1:WATER-1';
const topic = `plant/alarms/small/alarms/${id}`;

const variablesFor = (url: string) => ({
  EBBLINE_CLOCK: 'source',
  EBBLINE_MQTT_URL: url,
  EBBLINE_ALARM_TOPIC: 'plant/alarms',
});

function tellsOthers(start: () => Promise<TestBroker>): void {
  it('tells another client of each change, and leaves with the broker what stands', async () => {
    const broker = keep(await start());
    const listener = keep(await listen(broker.url, filter));
    const app = keep(await startApp({ variables: variablesFor(broker.url) }));
    const sender = keep(await connectSender(broker.url));
    await seconds(sender, 0, 2, 'dry');
    await seconds(sender, 2, 20, 'wet');
    await until(() => listener.of('WATER-1').includes('unacknowledged'));
    expect(await retainedAt(broker.url, filter, 'small')).toContain(topic);
    await act(app, id, 'acknowledge');
    await seconds(sender, 20, 40, 'dry');
    await until(() => listener.of('WATER-1').includes('latchedAcknowledged'));
    await seconds(sender, 40, 60, 'dry');
    // A reset is a second acknowledgement some seconds after the first: by the source clock, which the messages move.
    await judgedTo(app, 59);
    await act(app, id, 'acknowledge');
    await until(() => listener.of('WATER-1').at(-1) === 'cleared');
    expect(listener.of('WATER-1')).toEqual([
      'unacknowledged',
      'acknowledged',
      'latchedAcknowledged',
      'normal',
      'cleared',
    ]);
    expect(await retainedAt(broker.url, filter, 'small')).not.toContain(topic);
    const told = listener.heard.filter((one) => one.topic === topic).map((one) => one.told);
    expect(told[0]).toMatchObject({ site: 'small', alarm: { id, unit: 'm1', priority: 1 }, setAside: null });
    expect(told[1]?.change).toMatchObject({ from: 'unacknowledged', cause: 'acknowledge', by: 'Ines' });
    expect(app.faults).toEqual([]);
  });

  it('brings in line after a restart what the broker kept: what stands is told, what has gone is cleared', async () => {
    const broker = keep(await start());
    const data = keep(await temporaryFolder());
    const variables = variablesFor(broker.url);
    const first = await startApp({ variables, dataFolder: data.path });
    const sender = keep(await connectSender(broker.url));
    await seconds(sender, 0, 20, 'wet');
    const listener = keep(await listen(broker.url, filter));
    await until(() => listener.of('WATER-1').length > 0);
    await first.stop();
    const gone = { ...listener.heard.find((one) => one.topic === topic)?.told };
    const ghost = { ...gone, alarm: { ...gone.alarm, id: 'm2:WATER-1', unit: 'm2' } };
    await sender.raw('plant/alarms/small/alarms/m2:WATER-1', JSON.stringify(ghost), { retain: true });
    await sender.raw('plant/alarms/small/alarms/nonsense', JSON.stringify(ghost), { retain: true });
    const late = keep(await listen(broker.url, filter));
    keep(await startApp({ variables, dataFolder: data.path }));
    await until(() => late.heard.some((one) => one.topic.endsWith('nonsense') && one.told === null));
    await until(() => late.heard.some((one) => one.topic.endsWith('m2:WATER-1') && one.told === null));
    await until(() => late.heard.some((one) => one.topic === topic && one.told?.change === null));
    const ofGhost = late.heard.filter((one) => one.topic.endsWith('m2:WATER-1'));
    expect(ofGhost.at(-2)?.told?.alarm.state).toBe('normal');
    const kept = await retainedAt(broker.url, filter, 'small');
    expect(kept).toContain(topic);
    expect(kept.filter((one) => /nonsense|m2:WATER-1/.test(one))).toEqual([]);
  });

  it('tells the newest state once the broker is back, where several came while it was away', async () => {
    const broker = keep(await start());
    const link = keep(await cuttableLink(broker.port));
    const app = keep(await startApp({ variables: variablesFor(link.url) }));
    const sender = keep(await connectSender(broker.url));
    const listener = keep(await listen(broker.url, filter));
    await seconds(sender, 0, 20, 'wet');
    await until(() => listener.of('WATER-1').length === 1);
    link.allow(false);
    link.cut();
    await act(app, id, 'acknowledge');
    expect(listener.of('WATER-1')).toEqual(['unacknowledged']);
    link.allow(true);
    await until(() => listener.of('WATER-1').length > 1);
    expect(listener.of('WATER-1')[1]).toBe('acknowledged');
  });
}

describe('alarms over MQTT 3.1.1', () => tellsOthers(startEmbeddedBroker));

suiteNeeding(['mosquitto'], 'alarms over mosquitto', () => {
  tellsOthers(() => startMosquitto());
});
