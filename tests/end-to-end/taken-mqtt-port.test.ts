import { createServer } from 'node:net';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { startEbbline } from '../helpers/ebbline';
import { stopAfterAll } from '../helpers/stop-after';
import { hallFrame } from './browser/hall-frame';
import { dataFolder } from './data-folder';

const smallSite = fileURLToPath(new URL('../helpers/sites/small-site.yaml', import.meta.url));
const keep = stopAfterAll();

/** Makes sure that the default port of MQTT is taken: by this test, or by whoever has it already. */
async function takeDefaultPort(): Promise<void> {
  const server = createServer();
  await new Promise<void>((resolve, reject) => {
    server.once('error', (fault: NodeJS.ErrnoException) => (fault.code === 'EADDRINUSE' ? resolve() : reject(fault)));
    server.listen(1883, '127.0.0.1', resolve);
  });
  keep({ stop: () => new Promise<void>((resolve) => (server.listening ? server.close(() => resolve()) : resolve())) });
}

test('a default MQTT port that is taken moves the broker on, which the start, health and every Hall screen say', async () => {
  await takeDefaultPort();
  const data = keep(await dataFolder());
  const env = { EBBLINE_SITE: smallSite, EBBLINE_SIMULATOR: 'off', EBBLINE_MQTT_PORT: '' };
  const ebbline = keep(await startEbbline({ data: data.path, env }));

  const { broker } = await ebbline.health();
  expect(broker).toMatchObject({ state: 'connected', embedded: true });
  const port = Number(broker.address.split(':').at(-1));
  expect(port).toBeGreaterThan(1883);
  expect(broker.note).toMatch(/^port 1883 was taken/);
  expect(broker.note).toContain(`${port} is used`);
  expect(ebbline.output()).toContain(`MQTT: embedded broker on ${broker.address} (${broker.note})`);
  const frame = await hallFrame(ebbline.url, 'north', () => true);
  expect(frame.broker).toEqual(broker);
});
