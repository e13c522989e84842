import type { DemoState } from '@ebbline/shared/contract/demo-faults';
import { describe, expect, it } from 'vitest';
import { stopAfterAll } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { demoSiteFile, startDemoSimulator } from './demo-simulator';
import { postJson, startApp } from './running-app';

const keep = stopAfterAll();
const path = '/api/demo/faults';
const command = { id: 'slowInLeak', kind: 'fault', unit: 'm1', keys: { size: 'large' } };

async function demoApp() {
  const folder = keep(await temporaryFolder());
  return keep(await startApp({ variables: { EBBLINE_SITE: await demoSiteFile(folder.path) } }));
}

describe('the faults of the demo site', () => {
  it('are not there on a real site', async () => {
    const app = keep(await startApp());
    expect((await app.send(path)).status).toBe(404);
    expect((await app.send(path, postJson(command))).status).toBe(404);
  });

  it('are said to be out of reach while nothing is heard of the simulator, and a command is refused', async () => {
    const app = await demoApp();
    expect(await app.get<DemoState>(path)).toMatchObject({ running: false, kinds: [] });
    const reply = await app.send(path, postJson(command));
    expect(reply.status).toBe(503);
    expect(await reply.json()).toMatchObject({ code: 'DEMO_SILENT' });
  });

  it('go to the simulator as one command, and what it answers is what is said', async () => {
    const app = await demoApp();
    const simulator = keep(
      await startDemoSimulator(app.mqttUrl, ({ size }) =>
        size === 'large' ? { accepted: true } : { accepted: false, code: 'COMMAND_SHAPE', message: 'size: no such' },
      ),
    );
    await until(async () => (await app.get<DemoState>(path)).running);
    const done = await app.send(path, postJson(command));
    expect(done.status).toBe(200);
    expect(await done.json()).toMatchObject({ running: true, units: [{ id: 'm1' }] });
    expect(simulator.commands[0]).toMatchObject({ fault: 'slowInLeak', unit: 'm1', action: 'start', size: 'large' });
    expect(simulator.commands[0]).not.toHaveProperty('branch');

    const refused = await app.send(path, postJson({ ...command, keys: { size: 'vast' } }));
    expect(refused.status).toBe(409);
    expect(await refused.json()).toMatchObject({
      code: 'DEMO_COMMAND_REFUSED',
      detail: expect.stringContaining('size'),
    });
  });
});
