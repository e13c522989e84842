import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { connect } from 'node:net';
import { connect as connectTls } from 'node:tls';
import { generate } from 'mqtt-packet';
import { describe, expect, it } from 'vitest';
import { BoundedNotes } from '../../../backend/src/connections/embedded-broker/bounded-notes';
import { startEmbeddedBroker } from '../../../backend/src/connections/embedded-broker/embedded-broker';
import { brokerLimits } from '../../../backend/src/connections/embedded-broker/broker-limits';
import { readServerCertificate } from '../../../backend/src/connections/config/server-certificate';
import { connectClient } from '../../helpers/broker';
import { createAuthority } from '../../helpers/certificates';
import { embeddedPlace } from '../../helpers/embedded-place';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';

const keep = stopAfterEach();
/** Not the real hash, which has tests of its own: here it is counted how often it is asked for. */
const weak = (password: string): string => createHash('sha256').update(password).digest('hex');
const users = [
  { name: 'gateway', passwordHash: weak('north'), publish: ['hall/north/#'], subscribe: ['hall/north/set/+'] },
  { name: 'reader', passwordHash: weak('reads'), publish: [], subscribe: ['hall/#'] },
];

async function guarded(more: Parameters<typeof embeddedPlace>[0] = {}) {
  const said: string[] = [];
  let checks = 0;
  const passwords = {
    check: (hash: string, password: string) => {
      checks += 1;
      return Promise.resolve(weak(password) === hash);
    },
  };
  const notes = new BoundedNotes(
    (line) => said.push(line),
    () => 0,
  );
  const broker = await startEmbeddedBroker(
    embeddedPlace({ ...more, access: { users, passwords, notes, ...more.access } }),
  );
  keep({ stop: () => broker.close() });
  const url = `mqtt://127.0.0.1:${broker.port}`;
  const as = async (username: string, password: string, clientId?: string) =>
    keep(await connectClient({ url }, { username, password, ...(clientId === undefined ? {} : { clientId }) })).client;
  return { broker, url, as, said, checks: () => checks };
}

/** Return codes of CONNACK: 2 identifier rejected, 3 unavailable, 5 not authorized (MQTT 3.1.1, table 3.1). */
const code = (returnCode: number) => expect.objectContaining({ code: returnCode }) as Error;

describe('with an access file the embedded broker', () => {
  it('lets in by name and password only, and says nothing of which was wrong', async () => {
    const { as, url, broker, said } = await guarded();
    await as('gateway', 'north');
    for (const [name, password] of [
      ['gateway', 'south'],
      ['gateway', ''],
      ['stranger', 'north'],
      ['ebbline', 'north'],
    ] as const)
      await expect(as(name, password)).rejects.toEqual(code(5));
    await expect(connectClient({ url })).rejects.toEqual(code(5));
    expect(broker.refused()).toEqual({ signIn: 5, publish: 0, subscribe: 0 });
    expect(said).toHaveLength(3);
    expect(said.join('\n')).not.toMatch(/south|north|stranger/);
  });

  it('hands on what a user may send, and hangs up on one who sends elsewhere, so that nothing is thought delivered', async () => {
    const { as, broker } = await guarded();
    const heard: string[] = [];
    const reader = await as('reader', 'reads');
    reader.on('message', (topic) => heard.push(topic));
    await reader.subscribeAsync('hall/#', { qos: 1 });
    const gateway = await as('gateway', 'north');
    let closed = false;
    gateway.on('close', () => (closed = true));
    await gateway.publishAsync('hall/north/n1', '1', { qos: 1 });
    gateway.publish('hall/south/n1', '1', { qos: 1 });
    await until(() => closed, { what: 'the hang-up' });
    const again = await as('gateway', 'north');
    await again.publishAsync('hall/north/n2', '1', { qos: 1 });
    await until(() => heard.includes('hall/north/n2'));
    expect(heard).toEqual(['hall/north/n1', 'hall/north/n2']);
    expect(broker.refused().publish).toBe(1);
  });

  it('tells no last will on a topic that its user may not use', async () => {
    const { as, broker, url } = await guarded();
    const heard: string[] = [];
    const reader = await as('reader', 'reads');
    reader.on('message', (topic) => heard.push(topic));
    await reader.subscribeAsync('hall/#', { qos: 1 });
    for (const topic of ['hall/south/status', 'hall/north/status']) {
      const will = { topic, payload: Buffer.from('gone'), qos: 1, retain: false } as const;
      const client = keep(await connectClient({ url }, { username: 'gateway', password: 'north', will })).client;
      client.stream.destroy();
      await until(() => heard.includes('hall/north/status') || broker.refused().publish === 1);
    }
    await until(() => heard.length > 0);
    expect(heard).toEqual(['hall/north/status']);
  });

  it('grants subscriptions within the list only', async () => {
    const { as, broker } = await guarded();
    const gateway = await as('gateway', 'north');
    await gateway.subscribeAsync(['hall/north/set/+', 'hall/north/set/flow'], { qos: 1 });
    // Failure is 0x80 in SUBACK (MQTT 3.1.1, section 3.9.3).
    for (const filter of ['#', 'hall/north/#', '+/north/set/flow', 'hall/south/set/flow'])
      await expect(gateway.subscribeAsync(filter, { qos: 1 })).rejects.toThrow();
    expect(broker.refused().subscribe).toBe(4);
  });

  it('lets nobody take the client id of another user, but the same user', async () => {
    const { as } = await guarded();
    const first = await as('gateway', 'north', 'gw-1');
    await expect(as('reader', 'reads', 'gw-1')).rejects.toEqual(code(2));
    expect(first.connected).toBe(true);
    await as('gateway', 'north', 'gw-1');
  });

  it('reckons a hash once a user that comes again and again, and no more of a station that guesses than its limit', async () => {
    let wrong = 0;
    const attempts = {
      waitNow: () => Promise.resolve(wrong < 2 ? null : 60),
      waitOf: () => Promise.resolve(++wrong > 2 ? 60 : null),
    };
    const { as, checks } = await guarded({ access: { attempts } });
    for (let i = 0; i < 5; i++) await as('gateway', 'north');
    expect(checks()).toBe(1);
    await expect(as('gateway', 'guess')).rejects.toEqual(code(5));
    await expect(as('nobody', 'guess')).rejects.toEqual(code(5));
    await expect(as('gateway', 'guess')).rejects.toEqual(code(3));
    expect(checks()).toBe(3);
    await as('gateway', 'north');
  });

  it('lets this program in by passwords drawn at the start, the simulator to its own topics', async () => {
    const { broker } = await guarded();
    const own = keep(await connectClient({ url: broker.ownUrl })).client;
    await own.subscribeAsync('#', { qos: 1 });
    const simulator = keep(await connectClient({ url: broker.simulatorUrl })).client;
    await simulator.subscribeAsync('ebbline-simulator/command', { qos: 1 });
    await expect(simulator.subscribeAsync('#', { qos: 1 })).rejects.toThrow();
    const other = await guarded();
    expect(new URL(other.broker.ownUrl).password).not.toBe(new URL(broker.ownUrl).password);
    expect(new URL(broker.ownUrl).password).toMatch(/^[\w-]{43}$/);
  });
});

describe('without an access file the embedded broker', () => {
  it('lets in whoever reaches it, but nobody under its own name or client id', async () => {
    const { url } = await guarded({ access: { users: null } });
    const anyone = keep(await connectClient({ url })).client;
    await anyone.publishAsync('any/topic', '1', { qos: 1 });
    await expect(connectClient({ url }, { clientId: 'ebbline0123456789abcdef' })).rejects.toEqual(code(5));
    await expect(connectClient({ url }, { username: 'ebbline', password: 'x' })).rejects.toEqual(code(5));
  });
});

describe('with a certificate the embedded broker', () => {
  it('speaks TLS to others, 1.2 at least, and takes a renewed certificate without a stop', async () => {
    const folder = keep(await temporaryFolder());
    const authority = await createAuthority(folder.path, 'hall');
    const names = { certificate: 'C', key: 'K' };
    const issue = async () => {
      const read = readServerCertificate(await authority.issue('127.0.0.1'), names);
      if (!read.ok) throw new Error(read.fault);
      return read.value;
    };
    // A few places for those that are not let in yet: each client below finds one free again.
    const limits = { ...brokerLimits(65_536), waitingOfStation: 4 };
    const { broker } = await guarded({ certificate: await issue(), limits });
    const options = { ca: readFileSync(authority.file), username: 'gateway', password: 'north' };
    const url = `mqtts://127.0.0.1:${broker.port}`;
    for (let i = 0; i < 5; i++)
      await keep(await connectClient({ url }, options)).client.publishAsync('hall/north/n1', '1', { qos: 1 });
    const serial = (): Promise<string> =>
      new Promise((resolve, reject) => {
        const socket = connectTls({ host: '127.0.0.1', port: broker.port, ca: options.ca }, () => {
          resolve(socket.getPeerCertificate().serialNumber);
          socket.destroy();
        });
        socket.on('error', reject);
      });
    const before = await serial();
    broker.renew(await issue());
    expect(await serial()).not.toBe(before);
    // OpenSSL offers versions that old at security level 0 only; the alert comes from the other end.
    const older = { maxVersion: 'TLSv1.1', minVersion: 'TLSv1', ciphers: 'DEFAULT@SECLEVEL=0' } as const;
    const old = new Promise((resolve, reject) => {
      const socket = connectTls({ host: '127.0.0.1', port: broker.port, ca: options.ca, ...older }, () => {
        socket.destroy();
        resolve('let in');
      });
      socket.on('error', reject);
    });
    await expect(old).rejects.toMatchObject({ code: 'ERR_SSL_TLSV1_ALERT_PROTOCOL_VERSION' });
    const plain = connect(broker.port, '127.0.0.1');
    keep({ stop: () => void plain.destroy() });
    const answered = await new Promise<string>((resolve) => {
      let told = '';
      plain.on('error', () => undefined).on('data', (chunk: Buffer) => (told += chunk.toString('latin1')));
      plain.on('close', () => resolve(told));
      plain.write(generate({ cmd: 'connect', protocolId: 'MQTT', protocolVersion: 4, clientId: 'plain', clean: true }));
    });
    // CONNACK begins with 0x20 (MQTT 3.1.1, section 3.2.1).
    expect(answered.startsWith('\x20')).toBe(false);
  });
});
