import type { Frame, LoopFrame } from '@ebbline/shared/contract/live-feed';
import type { PointList } from '@ebbline/shared/contract/http-api';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { connectClient, startBroker, startEmbeddedBroker, type TestBroker } from '../helpers/broker';
import { startEbbline } from '../helpers/ebbline';
import { openFeed } from '../helpers/feed';
import { stopAfterEach } from '../helpers/stop-after';
import { until } from '../helpers/until';
import { dataFolder } from './data-folder';

const smallSite = fileURLToPath(new URL('../helpers/sites/small-site.yaml', import.meta.url));
const keep = stopAfterEach();

async function carriesToApiAndSocket(broker: TestBroker): Promise<void> {
  const data = keep(await dataFolder());
  const env = { EBBLINE_SITE: smallSite, EBBLINE_MQTT_URL: broker.url, EBBLINE_SIMULATOR: 'off' };
  const ebbline = keep(await startEbbline({ data: data.path, env }));
  const { client } = keep(await connectClient(broker));
  const socket = openFeed(ebbline.url);
  keep({ stop: () => void socket.close() });
  let newest: Frame | null = null;
  socket.on('frame', (frame, taken) => {
    newest = frame;
    taken();
  });
  socket.emit('show', { screen: 'loop', unit: 'm2' });
  await until(() => newest, { what: 'the first frame' });

  const valueIn = (points: LoopFrame['points']): number | null =>
    points.find(({ id }) => id === 'supply.temperature')?.value ?? null;
  const api = async () => valueIn((await ebbline.get<PointList>('/api/units/m2/points')).points);
  const screen = () => (newest?.screen === 'loop' ? valueIn(newest.points) : null);
  const delaysMs: number[] = [];
  for (const fahrenheit of [95, 96.8, 98.6, 100.4, 102.2]) {
    // NIST SP 811, B.8: t/°C = (t/°F − 32)/1.8.
    const celsius = (fahrenheit - 32) / 1.8;
    const arrived = (value: number | null) => value !== null && Math.abs(value - celsius) < 1e-9;
    const sentMs = performance.now();
    await client.publishAsync('small/m2/supply/t', String(fahrenheit));
    await Promise.all([
      until(async () => arrived(await api()), { everyMs: 10, what: 'the API' }),
      until(() => arrived(screen()), { what: 'the socket' }),
    ]);
    delaysMs.push(performance.now() - sentMs);
  }
  // The promise itself: on the screen within a second. Of five, as a busy machine may stand still for one of them.
  expect(delaysMs.sort((a, b) => a - b)[2]).toBeLessThan(1000);
}

describe('a message from any MQTT client', () => {
  test('over the broker that is here is in the API and on a socket within a second', async () =>
    carriesToApiAndSocket(keep(await startBroker())));
  test('over another broker of MQTT 3.1.1 as well', async () =>
    carriesToApiAndSocket(keep(await startEmbeddedBroker())));
});
