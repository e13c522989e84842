import { join } from 'node:path';
import { expect, test } from 'vitest';
import { startBroker } from '../helpers/broker';
import { ebblineEnvironment, projectRoot, startEbbline } from '../helpers/ebbline';
import { startProcess } from '../helpers/server-process';
import { stopAfterAll } from '../helpers/stop-after';
import { until } from '../helpers/until';
import { dataFolder } from './data-folder';

const keep = stopAfterAll();

test('the simulator runs apart from the backend, on a broker between the two, and ends with SIGTERM', async () => {
  const broker = keep(await startBroker());
  const env = { EBBLINE_MQTT_URL: broker.url, EBBLINE_SIMULATOR: 'off' };
  const ebbline = keep(await startEbbline({ data: keep(await dataFolder()).path, env }));
  const simulator = keep(
    startProcess(process.execPath, [join(projectRoot, 'backend/simulator.mjs')], {
      env: ebblineEnvironment({ data: keep(await dataFolder()).path, env: { EBBLINE_MQTT_URL: broker.url } }),
    }),
  );
  const fed = async (): Promise<boolean> => {
    const { status, lastSampleAge } = await ebbline.health();
    return status === 'ok' && lastSampleAge !== null;
  };
  await Promise.race([until(fed, { withinMs: 120_000, everyMs: 100, what: 'samples' }), simulator.ended]);
  simulator.child.kill('SIGTERM');
  expect(await simulator.exit).toBe(0);
});
