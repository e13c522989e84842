import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { freePort, onFreePort } from './free-port';
import { startProcess, type ServerProcess } from './server-process';
import { temporaryFolder } from './temporary-folder';
import { until } from './until';

export interface TestInflux {
  readonly port: number;
  readonly url: string;
  /** Ends it at once, without a farewell; what it holds stays. */
  kill(): Promise<void>;
  /** Starts it again on the same port with what it held. */
  restart(): Promise<void>;
  /** Rows of the first series of each statement of `q`, as InfluxDB itself answers. */
  ask(database: string, q: string): Promise<readonly InfluxSeries[]>;
  stop(): Promise<void>;
}

export interface InfluxSeries {
  readonly tags?: Readonly<Record<string, string>>;
  readonly columns: readonly string[];
  readonly values: readonly (readonly (number | string | null)[])[];
}

/** A real InfluxDB 1.x on free ports of 127.0.0.1 with its data in a temp folder, by the path of its program. */
export function launchInfluxd(program: string): Promise<TestInflux> {
  return onFreePort(async (port) => {
    const folder = await temporaryFolder();
    const configuration = join(folder.path, 'influxdb.conf');
    for (const name of ['meta', 'data', 'wal']) await mkdir(join(folder.path, name));
    await writeFile(configuration, influxConfiguration(folder.path, port, await freePort()));
    const url = `http://127.0.0.1:${port}`;
    let server: ServerProcess | null = null;
    const start = async (): Promise<void> => {
      const started = startProcess(program, ['-config', configuration]);
      server = started;
      const ready = until(async () => (await fetch(`${url}/ping`)).status === 204, { what: 'influxd to answer' });
      await Promise.race([ready, started.ended]);
    };
    const stop = async (): Promise<void> => {
      await server?.stop();
      await folder.stop();
    };
    try {
      await start();
    } catch (fault) {
      await stop();
      throw fault;
    }
    return {
      port,
      url,
      kill: async () => {
        server?.child.kill('SIGKILL');
        await server?.exit;
      },
      restart: start,
      ask: (database, q) => seriesOf(url, database, q),
      stop,
    };
  });
}

async function seriesOf(url: string, db: string, q: string): Promise<readonly InfluxSeries[]> {
  const reply = await fetch(`${url}/query?${new URLSearchParams({ db, q, epoch: 'ms' }).toString()}`);
  const { results } = (await reply.json()) as { results: { series?: InfluxSeries[]; error?: string }[] };
  return results.flatMap(({ series, error }) => {
    if (error !== undefined) throw new Error(`InfluxDB: ${error}`);
    return series ?? [];
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
