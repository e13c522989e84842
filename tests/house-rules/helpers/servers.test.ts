import { describe, expect, test } from 'vitest';
import { connectClient, startBroker, startEmbeddedBroker, type TestBroker } from '../../helpers/broker';
import { launchBrowser } from '../../helpers/browser';
import { startInfluxd } from '../../helpers/influxd';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterEach } from '../../helpers/stop-after';

const keep = stopAfterEach();

async function carriesAMessage(broker: TestBroker): Promise<void> {
  const listener = keep(await connectClient(broker));
  const sender = keep(await connectClient(broker));
  await listener.client.subscribeAsync('a/b');
  const arrived = new Promise<string>((resolve) => {
    listener.client.on('message', (topic, payload) => resolve(`${topic} ${payload.toString()}`));
  });
  await sender.client.publishAsync('a/b', '42', { qos: 1 });
  expect(await arrived).toBe('a/b 42');
}

describe('brokers of the test run', () => {
  test('the broker that is here carries a message', async () => carriesAMessage(keep(await startBroker())));
  test('the embedded one carries a message over TCP', async () => carriesAMessage(keep(await startEmbeddedBroker())));
});

suiteNeeding(['influxdb'], 'InfluxDB of the test run', () => {
  test('answers its ping', async () => {
    const influx = keep(await startInfluxd());
    expect((await fetch(`${influx.url}/ping`)).headers.get('x-influxdb-version')).toMatch(/^1\./);
  });
});

suiteNeeding(['chromium'], 'the browser of the test run', () => {
  test('renders a page', async () => {
    const { browser } = keep(await launchBrowser());
    const page = await browser.newPage();
    await page.setContent('<title>quiet</title>');
    expect(await page.title()).toBe('quiet');
  });
});
