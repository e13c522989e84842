import { createServer, type AddressInfo } from 'node:net';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Health } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { startEmbeddedBroker } from '../../../backend/src/connections/embedded-broker/embedded-broker';
import { embeddedPlace } from '../../helpers/embedded-place';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { startApp } from './running-app';

const keep = stopAfterEach();

/** A port that another program holds; here it is this one. */
async function takenPort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  keep({ stop: () => new Promise<void>((resolve) => server.close(() => resolve())) });
  return (server.address() as AddressInfo).port;
}

const linesOf = async (variables: Record<string, string>): Promise<string> => {
  try {
    keep(await startApp({ variables }));
  } catch (fault) {
    if (fault instanceof Error && fault.name === 'StartFault') return fault.message;
    throw fault;
  }
  throw new Error('the program started');
};

describe('a start is refused', () => {
  it('where the HTTP port is taken, saying by whom and what to set', async () => {
    const port = await takenPort();
    const lines = await linesOf({ EBBLINE_HTTP_PORT: `${port}` });
    expect(lines).toContain(`The HTTP port ${port} is taken`);
    expect(lines).toContain('set EBBLINE_HTTP_PORT');
    if (process.platform === 'linux') expect(lines).toContain(`(process ${process.pid})`);
  });

  it('where the MQTT port is set and taken', async () => {
    const port = await takenPort();
    const lines = await linesOf({ EBBLINE_MQTT_PORT: `${port}` });
    expect(lines).toContain(`The MQTT port ${port} is taken`);
    expect(lines).toContain('set EBBLINE_MQTT_PORT');
  });

  it('where the environment is wrong, with every fault at once', async () => {
    const lines = await linesOf({ EBBLINE_HTTP_PORT: 'x', EBBLINE_CLOCK: 'x' });
    expect(lines.split('\n').map((line) => line.split(' ')[0])).toEqual(['EBBLINE_HTTP_PORT', 'EBBLINE_CLOCK']);
  });

  it('where the site file is wrong, with line and key, or is not there', async () => {
    const folder = keep(await temporaryFolder());
    const file = join(folder.path, 'broken.yaml');
    await writeFile(file, 'site:\n  id: x\n  colour: green\n');
    expect(await linesOf({ EBBLINE_SITE: file })).toMatch(/broken\.yaml:3: site\.colour/);
    expect(await linesOf({ EBBLINE_SITE: join(folder.path, 'none.yaml') })).toContain('cannot be read');
  });
});

describe('the embedded broker', () => {
  it('takes the next free port where its own was only our choice', async () => {
    const port = await takenPort();
    const broker = await startEmbeddedBroker(embeddedPlace({ port }));
    keep({ stop: () => broker.close() });
    expect(broker.port).toBeGreaterThan(port);
    await expect(startEmbeddedBroker(embeddedPlace({ port, portSet: true }))).rejects.toThrow(
      `BROKER_PORT_TAKEN: port ${port} is taken`,
    );
  });
});

describe('a start that is refused late', () => {
  it('leaves nothing behind: the next one on the same folder works', async () => {
    const data = keep(await temporaryFolder());
    const port = await takenPort();
    const variables = { EBBLINE_HTTP_PORT: `${port}` };
    await expect(startApp({ variables, dataFolder: data.path })).rejects.toThrow('is taken');
    const app = keep(await startApp({ dataFolder: data.path }));
    expect((await app.get<Health>('/api/health')).broker.state).toBe('connected');
  });
});
