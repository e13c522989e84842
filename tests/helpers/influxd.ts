import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { freePort, onFreePort } from './free-port';
import { pathOf } from './requirements';
import { startProcess } from './server-process';
import { temporaryFolder } from './temporary-folder';
import { until } from './until';

export interface TestInflux {
  readonly port: number;
  readonly url: string;
  stop(): Promise<void>;
}

/** A real InfluxDB 1.x on free ports of 127.0.0.1 with its data in a temp folder. Needs 'influxdb'. */
export function startInfluxd(): Promise<TestInflux> {
  const program = pathOf('influxdb');
  return onFreePort(async (port) => {
    const folder = await temporaryFolder();
    const configuration = join(folder.path, 'influxdb.conf');
    for (const name of ['meta', 'data', 'wal']) await mkdir(join(folder.path, name));
    await writeFile(configuration, influxConfiguration(folder.path, port, await freePort()));
    const server = startProcess(program, ['-config', configuration]);
    const stop = async (): Promise<void> => {
      await server.stop();
      await folder.stop();
    };
    const url = `http://127.0.0.1:${port}`;
    try {
      const ready = until(async () => (await fetch(`${url}/ping`)).status === 204, { what: 'influxd to answer' });
      await Promise.race([ready, server.ended]);
      return { port, url, stop };
    } catch (fault) {
      await stop();
      throw fault;
    }
  });
}

const influxConfiguration = (folder: string, port: number, rpcPort: number): string => `
reporting-disabled = true
bind-address = "127.0.0.1:${rpcPort}"
[meta]
  dir = "${folder}/meta"
[data]
  dir = "${folder}/data"
  wal-dir = "${folder}/wal"
  query-log-enabled = false
[monitor]
  store-enabled = false
[http]
  bind-address = "127.0.0.1:${port}"
  log-enabled = false
`;
