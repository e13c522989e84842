import { describe, expect, it } from 'vitest';
import { connectClient, startBroker, startEmbeddedBroker, startMosquitto, type TestBroker } from '../../helpers/broker';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { cuttableLink } from './cuttable-link';
import { intakeOn } from './intake-bench';

const keep = stopAfterEach();

// MQTT 3.1.1 and 5.0, section 4.4: what was not acknowledged is delivered again when the session goes on.
function keepsThePromise(start: () => Promise<TestBroker>): void {
  it('delivers a message again that was not committed before the connection broke, and no other', async () => {
    const broker = keep(await start());
    const link = keep(await cuttableLink(broker.port));
    const { client: sender } = keep(await connectClient(broker));
    const first = keep(intakeOn(link.url));
    await first.start();
    await sender.publishAsync('hall/a', 'committed', { qos: 1 });
    await until(() => first.gate.waiting() === 1);
    first.gate.release(first.gate.mark());
    await sender.publishAsync('hall/a', 'not committed', { qos: 1 });
    await until(() => first.gate.waiting() === 1);
    link.allow(false);
    link.cut();
    await until(() => first.intake.state().state === 'lost');
    await first.stop();
    expect(first.gate.waiting()).toBe(0);

    link.allow(true);
    const second = keep(intakeOn(link.url));
    await second.start();
    await until(() => second.gate.waiting() === 1);
    expect(second.taken).toEqual(['not committed']);
  });

  it('hands messages on while acknowledgements wait, and lets them go in order', async () => {
    const broker = keep(await start());
    const { client: sender } = keep(await connectClient(broker));
    const under = keep(intakeOn(broker.url));
    await under.start();
    const sent = Array.from({ length: 15 }, (_, i) => `${i}`);
    await Promise.all(sent.map((text) => sender.publishAsync('hall/b', text, { qos: 1 })));
    await until(() => under.gate.waiting() === sent.length);
    expect(under.taken).toEqual(sent);
    under.gate.release(under.gate.mark());
    expect(under.gate.waiting()).toBe(0);
    // The broker has a limit of messages in flight; further ones come only if it took the acknowledgements.
    const more = Array.from({ length: 30 }, (_, i) => `more ${i}`);
    const all = Promise.all(more.map((text) => sender.publishAsync('hall/b', text, { qos: 1 })));
    await until(() => {
      under.gate.release(under.gate.mark());
      return under.taken.length === sent.length + more.length;
    });
    await all;
    expect(under.taken.slice(sent.length)).toEqual(more);
  });

  it('keeps retained messages apart from live ones and says online and, lost, offline', async () => {
    const broker = keep(await start());
    const { client } = keep(await connectClient(broker));
    await client.publishAsync('hall/c', 'kept', { qos: 1, retain: true });
    const under = keep(intakeOn(broker.url, { subscriptions: ['hall/c'] }));
    await under.start();
    await until(() => under.messages.length === 1);
    await client.publishAsync('hall/c', 'live', { qos: 0 });
    await until(() => under.messages.length === 2);
    expect(under.messages.map(({ retained }) => retained)).toEqual([true, false]);

    const heard: string[] = [];
    client.on('message', (_topic, payload) => heard.push(payload.toString()));
    await client.subscribeAsync('ebbline/test/backend/status');
    await until(() => heard.at(-1) === 'online');
    await under.stop();
    await until(() => heard.at(-1) === 'offline');
  });

  it('tells of a lost connection and comes back by itself', async () => {
    const broker = keep(await start());
    const link = keep(await cuttableLink(broker.port));
    const { client } = keep(await connectClient(broker));
    const heard: string[] = [];
    client.on('message', (_topic, payload) => heard.push(payload.toString()));
    await client.subscribeAsync('ebbline/test/backend/status');
    const under = keep(intakeOn(link.url));
    await under.start();
    expect(under.intake.state()).toMatchObject({ state: 'connected', embedded: false });
    link.allow(false);
    link.cut();
    await until(() => under.intake.state().state === 'lost');
    await until(() => heard.at(-1) === 'offline', { what: 'the last will' });
    await client.publishAsync('hall/d', 'while away', { qos: 1 });
    link.allow(true);
    await until(() => under.intake.state().state === 'connected');
    await until(() => under.taken.includes('while away'));
    await until(() => heard.at(-1) === 'online');
  });
}

describe('intake on a broker of MQTT 3.1.1', () => keepsThePromise(startEmbeddedBroker));

suiteNeeding(['mosquitto'], 'intake on mosquitto, MQTT 5', () => {
  keepsThePromise(() => startMosquitto());
});

describe('intake and a broker that is not there', () => {
  it('starts all the same, and connects once it is', async () => {
    const broker = keep(await startBroker());
    const link = keep(await cuttableLink(broker.port));
    link.allow(false);
    const under = keep(intakeOn(link.url));
    await under.start();
    expect(under.intake.state().state).toBe('lost');
    link.allow(true);
    await until(() => under.intake.state().state === 'connected');
  });
});
