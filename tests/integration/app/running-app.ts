import { fileURLToPath } from 'node:url';
import type { Frame, View } from '@ebbline/shared/contract/live-feed';
import { startBackend } from '../../../backend/src/main';
import { openFeed, type Feed } from '../../helpers/feed';
import { signIn, type SignIn } from '../../helpers/sign-in';
import { temporaryFolder } from '../../helpers/temporary-folder';

export const smallSiteFile = fileURLToPath(new URL('../../helpers/sites/small-site.yaml', import.meta.url));

export interface RunningApp {
  /** Without a slash at its end. */
  readonly url: string;
  readonly mqttUrl: string;
  readonly dataFolder: string;
  /** What it said while it started. */
  readonly said: readonly string[];
  /** Faults of its own that it reported. */
  readonly faults: readonly unknown[];
  readonly signIn: SignIn;
  get<Body>(path: string): Promise<Body>;
  /** Signed in as whoever the body names as operator. */
  send(path: string, init?: RequestInit): Promise<Response>;
  stop(): Promise<void>;
}

export interface AppOptions {
  readonly variables?: Readonly<Record<string, string>>;
  /** Kept after the stop where given; else a folder of its own that is removed. */
  readonly dataFolder?: string;
  readonly frontendFolder?: string;
  /** Without it site files are read on this thread. */
  readonly siteWorker?: URL;
  /** Hears each line that it says, at once. */
  readonly onSaid?: (line: string) => void;
}

/** The backend from its sources, in this process, on free ports, with history on this thread. */
export async function startApp({
  variables,
  dataFolder,
  frontendFolder,
  siteWorker,
  onSaid,
}: AppOptions = {}): Promise<RunningApp> {
  const folder = dataFolder === undefined ? await temporaryFolder() : null;
  const data = dataFolder ?? folder?.path ?? '';
  const said: string[] = [];
  const faults: unknown[] = [];
  const running = await startBackend({
    variables: {
      EBBLINE_DATA: data,
      EBBLINE_SITE: smallSiteFile,
      EBBLINE_SIMULATOR: 'off',
      EBBLINE_HTTP_PORT: '0',
      EBBLINE_MQTT_PORT: '0',
      ...variables,
    },
    workingFolder: data,
    demoSiteFile: smallSiteFile,
    frontendFolder: frontendFolder ?? null,
    historyWorker: null,
    siteWorker: siteWorker ?? null,
    say: (line) => {
      said.push(line);
      onSaid?.(line);
    },
    report: (fault) => faults.push(fault),
  });
  const url = running.address.replace(/\/$/, '');
  const entry = signIn(url, () => said.join('\n'));
  const send = async (path: string, init?: RequestInit): Promise<Response> => {
    const proof = await (init?.method === 'POST' ? entry.proofFor(init.body) : entry.proof());
    return fetch(`${url}${path}`, { ...init, headers: { ...proof, ...(init?.headers as Record<string, string>) } });
  };
  // While the journal can still be written: without a record nobody gets a token.
  await entry.proof();
  return {
    url,
    mqttUrl: running.mqttUrl,
    dataFolder: data,
    said,
    faults,
    signIn: entry,
    send,
    get: async <Body>(path: string): Promise<Body> => (await (await send(path)).json()) as Body,
    stop: async () => {
      await running.stop();
      await folder?.stop();
    },
  };
}

export const postJson = (body: unknown): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: typeof body === 'string' ? body : JSON.stringify(body),
});

export interface Screen {
  readonly frames: Frame[];
  readonly refusals: { readonly code: string }[];
  readonly socket: Feed;
  /** Acknowledgements of frames that were not taken; each lets the next frame come. */
  readonly held: (() => void)[];
  show(view: View): void;
  stop(): void;
}

/** A screen as an outsider would connect one. `takes`: whether it takes frames by itself. */
export function connectScreen(url: string, takes = true): Screen {
  const socket = openFeed(url, false);
  const frames: Frame[] = [];
  const refusals: { code: string }[] = [];
  const held: (() => void)[] = [];
  socket.on('frame', (frame, taken) => {
    frames.push(frame);
    if (takes) taken();
    else held.push(taken);
  });
  socket.on('refused', (refusal) => refusals.push(refusal));
  return {
    frames,
    refusals,
    socket,
    held,
    show: (view) => void socket.emit('show', view),
    stop: () => void socket.close(),
  };
}
