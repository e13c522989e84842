import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { onFreePort } from './free-port';
import { startProcess } from './server-process';
import { temporaryFolder } from './temporary-folder';
import { until } from './until';

export interface BrokerOptions {
  /** Further lines of the configuration, in place of `allow_anonymous true`. */
  readonly configuration?: readonly string[];
}

export interface Mosquitto {
  readonly port: number;
  readonly url: string;
  readonly pid: number;
  stop(): Promise<void>;
}

/** Runs `program` with a configuration of its own on a free port of 127.0.0.1. */
export function launchMosquitto(program: string, options: BrokerOptions = {}): Promise<Mosquitto> {
  return onFreePort(async (port) => {
    const folder = await temporaryFolder();
    const configuration = join(folder.path, 'mosquitto.conf');
    const lines = [
      `listener ${port} 127.0.0.1`,
      'persistence false',
      ...(options.configuration ?? ['allow_anonymous true']),
    ];
    await writeFile(configuration, `${lines.join('\n')}\n`, { mode: 0o644 });
    const server = startProcess(program, ['-c', configuration]);
    const stop = async (): Promise<void> => {
      await server.stop();
      await folder.stop();
    };
    try {
      const ready = until(() => /mosquitto version .* running/.test(server.output()), { what: 'mosquitto to run' });
      await Promise.race([ready, server.ended]);
      return { port, url: `mqtt://127.0.0.1:${port}`, pid: server.pid, stop };
    } catch (fault) {
      await stop();
      throw fault;
    }
  });
}
