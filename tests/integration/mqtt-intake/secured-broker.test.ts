import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Health, Intake } from '@ebbline/shared/contract/http-api';
import { startMosquitto, connectClient } from '../../helpers/broker';
import { createAuthority, type Authority, type IssuedFiles } from '../../helpers/certificates';
import { suiteNeeding } from '../../helpers/requirements';
import { temporaryFolder, type TemporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { startApp } from '../app/running-app';
import { telemetryOfM1, topicOfM1 } from '../app/telemetry';
import { startWebsocketFront } from './websocket-front';

interface Listener {
  readonly files: IssuedFiles;
  readonly websockets?: boolean;
  /** Asks for a certificate of this authority. */
  readonly clients?: Authority;
}

interface Listening {
  readonly port: number;
  stop(): Promise<void>;
}

suiteNeeding(['mosquitto'], 'a broker over TLS and websockets', () => {
  let folder: TemporaryFolder;
  let trusted: Authority;
  let other: Authority;
  let good: IssuedFiles;

  beforeAll(async () => {
    folder = await temporaryFolder();
    trusted = await createAuthority(folder.path, 'trusted');
    other = await createAuthority(folder.path, 'other');
    good = await trusted.issue('127.0.0.1');
  });

  afterAll(() => folder.stop());

  /** A real broker that speaks TLS itself, or one behind a web server that does. */
  async function listen({ files, websockets = false, clients }: Listener): Promise<Listening> {
    if (websockets) return behindFront(files);
    return startMosquitto({
      configuration: [
        `certfile ${files.certificate}`,
        `keyfile ${files.key}`,
        ...(clients === undefined ? [] : [`cafile ${clients.file}`, 'require_certificate true']),
        'allow_anonymous true',
      ],
    });
  }

  async function behindFront(files: IssuedFiles | null): Promise<Listening> {
    const broker = await startMosquitto();
    const front = await startWebsocketFront(broker.port, files);
    return {
      port: front.port,
      async stop() {
        await front.stop();
        await broker.stop();
      },
    };
  }

  const url = (scheme: string, port: number): string =>
    `${scheme}://127.0.0.1:${port}${scheme.startsWith('ws') ? '/mqtt' : ''}`;
  const ca = (): Record<string, string> => ({ EBBLINE_MQTT_CA_FILE: trusted.file });
  const own = ({ certificate, key }: IssuedFiles): Record<string, string> => ({
    EBBLINE_MQTT_CERTIFICATE_FILE: certificate,
    EBBLINE_MQTT_KEY_FILE: key,
  });

  /** Starts against the broker, and resolves with what health says once a message came through it, or it was refused. */
  async function outcome(url: string, variables: Record<string, string>, send: (() => Promise<void>) | null) {
    const app = await startApp({ variables: { EBBLINE_MQTT_URL: url, ...variables } });
    try {
      if (send === null) {
        return await until(async () => {
          const { broker } = await app.get<Health>('/api/health');
          return broker.state === 'lost' ? broker.note : null;
        });
      }
      await until(async () => (await app.get<Health>('/api/health')).broker.state === 'connected');
      await until(async () => {
        await send();
        return (await app.get<Intake>('/api/intake')).samples > 0;
      });
      return 'connected';
    } finally {
      await app.stop();
    }
  }

  async function connectsTo(address: string, variables: Record<string, string>, options: object = {}): Promise<void> {
    const sender = await connectClient({ url: address }, options);
    const send = async (): Promise<void> => {
      await sender.client.publishAsync(topicOfM1, telemetryOfM1(Date.now()), { qos: 1 });
    };
    expect(await outcome(address, variables, send)).toBe('connected');
    await sender.stop();
  }

  it.each([
    ['mqtts', false],
    ['wss', true],
  ] as const)('is used over %s, with its name and its chain checked', async (scheme, websockets) => {
    const broker = await listen({ files: good, websockets });
    await connectsTo(url(scheme, broker.port), ca(), { ca: readFileSync(trusted.file) });
    await broker.stop();
  });

  it('is used over a plain websocket, and said where none is served', async () => {
    const broker = await behindFront(null);
    const address = url('ws', broker.port);
    await connectsTo(address, {});
    expect(await outcome(address.replace('/mqtt', '/other?token=secret'), {}, null)).toMatch(
      /^the broker could not be used: no websocket for MQTT is served at \/other;/,
    );
    await broker.stop();
  });

  it('is used with a certificate of our own where it asks for one, and says so where there is none', async () => {
    const broker = await listen({ files: good, clients: trusted });
    const address = url('mqtts', broker.port);
    const mine = await trusted.issue('ebbline');
    const [cert, key] = [readFileSync(mine.certificate), readFileSync(mine.key)];
    await connectsTo(address, { ...ca(), ...own(mine) }, { ca: readFileSync(trusted.file), cert, key });
    expect(await outcome(address, ca(), null)).toMatch(
      /wants a certificate of this program.*EBBLINE_MQTT_CERTIFICATE_FILE/,
    );
    await broker.stop();
  });

  it.each([
    [
      'an authority that is not trusted',
      () => other.issue('127.0.0.1'),
      /authority that is not trusted here.*EBBLINE_MQTT_CA_FILE/,
    ],
    ['another name', () => trusted.issue('broker.example'), /is for another name than 127\.0\.0\.1/],
    ['a time that has passed', () => trusted.issue('127.0.0.1', { from: -9, to: -1 }), /has expired; renew it there/],
    ['a time to come', () => trusted.issue('127.0.0.1', { from: 1, to: 9 }), /not valid yet; set the clock/],
  ] as const)('is not used with a certificate of %s, whatever the environment says', async (_what, issue, message) => {
    const before = process.env['NODE_TLS_REJECT_UNAUTHORIZED'];
    process.env['NODE_TLS_REJECT_UNAUTHORIZED'] = '0';
    try {
      for (const websockets of [false, true]) {
        const broker = await listen({ files: await issue(), websockets });
        const address = url(websockets ? 'wss' : 'mqtts', broker.port).replace('://', '://us%40r:secret@');
        const note = await outcome(address, ca(), null);
        expect(note).toMatch(message);
        expect(note).not.toMatch(/secret|us@r/);
        await broker.stop();
      }
    } finally {
      if (before === undefined) Reflect.deleteProperty(process.env, 'NODE_TLS_REJECT_UNAUTHORIZED');
      else process.env['NODE_TLS_REJECT_UNAUTHORIZED'] = before;
    }
  });

  it('is not used where the port speaks no TLS', async () => {
    const broker = await startMosquitto();
    expect(await outcome(url('mqtts', broker.port), ca(), null)).toMatch(/speaks no TLS at this port|hung up while/);
    await broker.stop();
  });

  it('is not started with files that can not do: each is told by its variable, without a word of its content', async () => {
    const broken = join(folder.path, 'broken.pem');
    writeFileSync(broken, 'no certificate');
    const stranger = await other.issue('127.0.0.1');
    const start = (variables: Record<string, string>) =>
      startApp({ variables: { EBBLINE_MQTT_URL: 'mqtts://127.0.0.1:1', ...variables } });
    await expect(start({ EBBLINE_MQTT_CA_FILE: join(folder.path, 'none.pem') })).rejects.toThrow(
      /^EBBLINE_MQTT_CA_FILE names a file that cannot be read \(ENOENT\)/,
    );
    await expect(start({ EBBLINE_MQTT_CA_FILE: broken })).rejects.toThrow(/without a certificate in PEM$/);
    await expect(start({ ...ca(), ...own({ ...good, key: stranger.key }) })).rejects.toThrow(
      /^EBBLINE_MQTT_KEY_FILE does not belong to EBBLINE_MQTT_CERTIFICATE_FILE/,
    );
  });
});
