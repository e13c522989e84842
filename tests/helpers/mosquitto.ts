import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { onFreePort } from './free-port';
import { startProcess, type ServerProcess } from './server-process';
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
  /** Ends it at once, without a farewell: sessions and messages that it held are gone. */
  kill(): Promise<void>;
  /** Starts it again on the same port. */
  restart(): Promise<void>;
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
    let server: ServerProcess | null = null;
    const start = async (): Promise<ServerProcess> => {
      const started = startProcess(program, ['-c', configuration]);
      server = started;
      const ready = until(() => /mosquitto version .* running/.test(started.output()), { what: 'mosquitto to run' });
      await Promise.race([ready, started.ended]);
      return started;
    };
    const stop = async (): Promise<void> => {
      await server?.stop();
      await folder.stop();
    };
    try {
      const { pid } = await start();
      return {
        port,
        url: `mqtt://127.0.0.1:${port}`,
        pid,
        kill: async () => {
          server?.child.kill('SIGKILL');
          await server?.exit;
        },
        restart: async () => {
          await start();
        },
        stop,
      };
    } catch (fault) {
      await stop();
      throw fault;
    }
  });
}
