import { connect, type Socket } from 'node:net';
import { generate } from 'mqtt-packet';
import { describe, expect, it } from 'vitest';
import { brokerLimits, type BrokerLimits } from '../../../backend/src/connections/embedded-broker/broker-limits';
import { startEmbeddedBroker } from '../../../backend/src/connections/embedded-broker/embedded-broker';
import { connectClient } from '../../helpers/broker';
import { embeddedPlace } from '../../helpers/embedded-place';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';

const keep = stopAfterEach();
const ownClientId = 'ebbline0123456789abcdef';

async function broker(limits: Partial<BrokerLimits> = {}) {
  const running = await startEmbeddedBroker(embeddedPlace({ limits: { ...brokerLimits(65_536), ...limits } }));
  keep({ stop: () => running.close() });
  return { port: running.port, url: `mqtt://127.0.0.1:${running.port}`, ownUrl: running.ownUrl };
}

type Options = Parameters<typeof connectClient>[1];

/** A client, and what it has been sent: topic and payload. */
async function client(url: string, options: Options = {}) {
  const connected = keep(await connectClient({ url }, options));
  const heard: string[] = [];
  connected.client.on('message', (topic, payload) => heard.push(`${topic}=${payload.toString()}`));
  return { client: connected.client, heard, stop: connected.stop };
}

/** A connection that speaks for itself. */
async function raw(port: number): Promise<{ socket: Socket; closed: () => boolean }> {
  const socket = connect(port, '127.0.0.1');
  let closed = false;
  socket.on('error', () => undefined).on('close', () => (closed = true));
  keep({ stop: () => void socket.destroy() });
  await new Promise<void>((resolve) => socket.once('connect', () => resolve()));
  return { socket, closed: () => closed };
}

const hello = (clientId: string): Buffer =>
  generate({ cmd: 'connect', protocolId: 'MQTT', protocolVersion: 4, clientId, clean: true, keepalive: 60 });

describe('the embedded broker', () => {
  it('hangs up on a packet that says it is too long, before it has come', async () => {
    const { port, url } = await broker();
    const sender = await raw(port);
    // PUBLISH with a remaining length of 268,435,455 bytes (MQTT 3.1.1, section 2.2.3), of which none follows.
    sender.socket.write(Buffer.concat([hello('long'), Buffer.from([0x30, 0xff, 0xff, 0xff, 0x7f])]));
    await until(sender.closed, { what: 'the hang-up' });
    const other = await client(url);
    await other.client.publishAsync('a', 'x'.repeat(900_000), { qos: 1 });
  });

  it('lets no more clients in than it may, and another one as soon as one leaves', async () => {
    const { port, url } = await broker({ clients: 2 });
    await client(url);
    const second = await client(url);
    const third = await raw(port);
    await until(third.closed, { what: 'the refusal' });
    await second.stop();
    const welcomed = async (): Promise<boolean> => {
      const one = await raw(port);
      let answered = false;
      one.socket.once('data', () => (answered = true)).write(hello('third'));
      await until(() => answered || one.closed());
      return answered;
    };
    await until(welcomed, { what: 'a place' });
  });

  it('lets no station hold more places than its share without saying who it is', async () => {
    const { port, url } = await broker({ clients: 20, waitingOfStation: 3 });
    const silent: Awaited<ReturnType<typeof raw>>[] = [];
    let named = 0;
    for (let i = 0; i < 4; i++) silent.push(await raw(port));
    await until(() => silent[3]?.closed() === true, { what: 'the refusal of the fourth' });
    expect(silent.slice(0, 3).some(({ closed }) => closed())).toBe(false);
    // A place that is left is free again, and who is let in holds none of them.
    silent[0]?.socket.destroy();
    const welcomed = async (): Promise<boolean> => {
      const one = await raw(port);
      let answered = false;
      one.socket.once('data', () => (answered = true)).write(hello(`named ${(named += 1)}`));
      await until(() => answered || one.closed());
      return answered;
    };
    for (let i = 0; i < 5; i++) await until(welcomed, { what: `a place for number ${i}` });
    const listener = await client(url);
    await listener.client.subscribeAsync('a', { qos: 1 });
  });

  it('hands on what finds no room among the retained, and keeps the rest', async () => {
    const { url } = await broker({ retainedTopics: 2 });
    const listener = await client(url);
    await listener.client.subscribeAsync('kept/#', { qos: 1 });
    const sender = await client(url);
    for (const topic of ['kept/a', 'kept/b', 'kept/c', 'kept/a'])
      await sender.client.publishAsync(topic, `${topic} `, { qos: 1, retain: true });
    await until(() => listener.heard.length === 4);
    const later = await client(url);
    await later.client.subscribeAsync('kept/#', { qos: 1 });
    await sender.client.publishAsync('kept/last', 'x', { qos: 1 });
    await until(() => later.heard.includes('kept/last=x'));
    expect(later.heard.sort()).toEqual(['kept/a=kept/a ', 'kept/b=kept/b ', 'kept/last=x']);
  });

  it('queues for us while we are away, and for nobody else', async () => {
    const { url: anyones, ownUrl } = await broker();
    const sender = await client(anyones);
    const away = async (clientId: string, url = anyones): Promise<string[]> => {
      const first = await client(url, { clientId, clean: false });
      await first.client.subscribeAsync('news', { qos: 1 });
      await first.client.endAsync();
      await sender.client.publishAsync('news', `for ${clientId}`, { qos: 1 });
      const second = await client(url, { clientId, clean: false });
      await second.client.subscribeAsync('after', { qos: 1 });
      await sender.client.publishAsync('after', 'x', { qos: 1 });
      await until(() => second.heard.includes('after=x'));
      return second.heard;
    };
    expect(await away('stranger')).toEqual(['after=x']);
    expect(await away(ownClientId, ownUrl)).toContain(`news=for ${ownClientId}`);
  });

  it('hangs up on a client that takes nothing, and holds up no other', async () => {
    const { port, url } = await broker({ unsentBytes: 262_144 });
    const deaf = await raw(port);
    deaf.socket.pause();
    deaf.socket.write(
      Buffer.concat([
        hello('deaf'),
        generate({ cmd: 'subscribe', messageId: 1, subscriptions: [{ topic: 'flood', qos: 0 }] }),
      ]),
    );
    const listener = await client(url);
    await listener.client.subscribeAsync('flood', { qos: 1 });
    const sender = await client(url);
    const payload = 'x'.repeat(65_536);
    // 32 MB: more than the system holds for one connection on its way (tcp_wmem and tcp_rmem, some MB).
    for (let i = 0; i < 500; i++) await sender.client.publishAsync('flood', payload, { qos: 1 });
    await until(() => listener.heard.length === 500, { what: 'all that the other one asked for' });
    deaf.socket.resume();
    await until(deaf.closed, { what: 'the hang-up' });
  });

  it('refuses further subscriptions of a client that has many', async () => {
    const { url, ownUrl } = await broker({ subscriptionsOfClient: 2 });
    const one = await client(url);
    await one.client.subscribeAsync(['a', 'b'], { qos: 1 });
    await expect(one.client.subscribeAsync('c', { qos: 1 })).rejects.toThrow();
    const own = await client(ownUrl, { clientId: ownClientId });
    expect(await own.client.subscribeAsync(['a', 'b', 'c', 'd'], { qos: 1 })).toHaveLength(4);
  });
});
