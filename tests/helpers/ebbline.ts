import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { Health } from '@ebbline/shared/contract/http-api';

import { type ProcessOptions, type ServerProcess, startProcess } from './server-process';
import { signIn, type SignIn } from './sign-in';
import { until } from './until';

export interface EbblineOptions extends Omit<ProcessOptions, 'env'> {
  /** The project, or a copy of it. */
  readonly root?: string;
  readonly data: string;
  /** Further variables of the environment; HTTP and MQTT ports are picked free unless set here. */
  readonly env?: Readonly<Record<string, string>>;
  /** A program and its arguments that becomes this one, with mounts or limits of its own: `unshare`, `sh -c '… exec "$@"' sh`. */
  readonly under?: readonly string[];
}

export interface Ebbline extends ServerProcess {
  /** As its last line says. */
  readonly url: string;
  readonly signIn: SignIn;
  get<Body>(path: string): Promise<Body>;
  /** Signed in as whoever the body names as operator. */
  post(path: string, body: unknown): Promise<Response>;
  health(): Promise<Health>;
  alarms(): Promise<readonly Alarm[]>;
}

export const projectRoot = fileURLToPath(new URL('../../', import.meta.url));

/** The variables that say where a program of the test run lives; nothing of the caller's own settings leaks in. */
export function ebblineEnvironment(options: EbblineOptions): NodeJS.ProcessEnv {
  const own = Object.entries(process.env).filter(([name]) => !/^(EBBLINE|VITEST|NODE_ENV|NODE_OPTIONS)/.test(name));
  return {
    ...Object.fromEntries(own),
    EBBLINE_DATA: options.data,
    EBBLINE_HTTP_PORT: '0',
    EBBLINE_MQTT_PORT: '0',
    ...options.env,
  };
}

/** `node backend/start.mjs`, not waited for. */
export function launchEbbline(options: EbblineOptions): ServerProcess {
  const root = options.root ?? projectRoot;
  const program = [process.execPath, join(root, 'backend/start.mjs')];
  const [command = process.execPath, ...args] = [...(options.under ?? []), ...program];
  return startProcess(command, args, {
    ...options,
    env: ebblineEnvironment(options),
  });
}

/** Starts the real program and waits until it has printed its address. */
export async function startEbbline(options: EbblineOptions): Promise<Ebbline> {
  const server = launchEbbline(options);
  try {
    const url = await Promise.race([
      until(() => addressIn(server.output()), { withinMs: 150_000, what: 'the address' }),
      server.ended,
    ]);
    return { ...server, ...api(url, signIn(url, server.output)) };
  } catch (fault) {
    await server.stop();
    throw new Error(`start failed; it printed:\n${server.output()}`, { cause: fault });
  }
}

/** A line of the log, which goes on once the program runs: in words or as JSON. */
const logged = /^(\d{4}-\d{2}-\d{2}T[\d:.]+Z (info|warning|error) |\{.*"level":"(warning|error)")/;

/** The address in the last whole line of the start, or null while that line is another one. */
export function addressIn(output: string): string | null {
  const lines = output.trimEnd().split('\n');
  const last = lines.filter((line) => !logged.test(line)).at(-1) ?? '';
  return /(http:\/\/[^\s"#]+?)\/?("\})?\s*$/.exec(last)?.[1] ?? null;
}

function api(url: string, entry: SignIn): Pick<Ebbline, 'url' | 'signIn' | 'get' | 'post' | 'health' | 'alarms'> {
  const get = async <Body>(path: string): Promise<Body> => {
    const reply = await fetch(`${url}${path}`, { headers: await entry.proof() });
    if (!reply.ok) throw new Error(`GET ${path}: ${reply.status} ${await reply.text()}`);
    return (await reply.json()) as Body;
  };
  return {
    url,
    signIn: entry,
    get,
    post: async (path, body) =>
      fetch(`${url}${path}`, {
        method: 'POST',
        headers: { ...(await entry.proofFor(body)), 'content-type': 'application/json' },
        body: JSON.stringify(body),
      }),
    health: () => get<Health>('/api/health'),
    alarms: async () => (await get<{ alarms: readonly Alarm[] }>('/api/alarms')).alarms,
  };
}
