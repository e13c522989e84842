import { connectAsync, type MqttClient } from 'mqtt';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { statusMessage, type SimulatedMessage } from '../../../../simulator/src/payload/messages';
import { MqttPublisher } from '../../../../simulator/src/publish/mqtt-publisher';
import { commandTopic, stateTopic } from '../../../../simulator/src/publish/topics';
import { startBroker, type TestBroker } from '../../../helpers/broker';
import { until } from '../../../helpers/until';

let broker: TestBroker;
let listener: MqttClient;
let publisher: MqttPublisher;
const heard: { topic: string; payload: string; retain: boolean }[] = [];
const commands: string[] = [];
const status = 'quillmere/gateways/north-a/status';
const last = (topic: string): string | undefined => heard.filter((message) => message.topic === topic).at(-1)?.payload;
const telemetry: SimulatedMessage = {
  topic: 'quillmere/north/N1/telemetry',
  payload: '{}',
  sourceMs: 0,
  retain: false,
  gateway: 'north-a',
};

beforeEach(async () => {
  heard.length = 0;
  commands.length = 0;
  broker = await startBroker();
  listener = await connectAsync(broker.url);
  listener.on('message', (topic, payload, { retain }) => heard.push({ topic, payload: payload.toString(), retain }));
  await listener.subscribeAsync('#');
  publisher = await opened({ gateways: ['north-a'], inOrder: false });
});

async function opened(own: { gateways: readonly string[]; inOrder: boolean }): Promise<MqttPublisher> {
  const opening = new MqttPublisher({
    url: broker.url,
    onCommand: (payload) => commands.push(payload),
    farewell: null,
    onTrouble: () => undefined,
    ...own,
  });
  opening.open();
  const greeted = (gateway: string): boolean => last(`quillmere/gateways/${gateway}/status`) === 'online';
  await until(() => own.gateways.every(greeted), { what: 'the greetings' });
  return opening;
}

afterEach(async () => {
  await publisher.close();
  await listener.endAsync(true);
  await broker.stop();
});

test('a gateway greets, sends over its own line, and says goodbye at the end', async () => {
  publisher.publish(telemetry);
  await until(() => last(telemetry.topic) === '{}', { what: 'telemetry' });
  await publisher.close();
  await until(() => last(status) === 'offline', { what: 'the goodbye' });
});

test('a lost line is told by the broker, sends nothing, and comes back', async () => {
  publisher.publish(statusMessage('north-a', false, 0));
  await until(() => last(status) === 'offline', { what: 'the last will' });
  publisher.publish(telemetry);
  publisher.publish(statusMessage('north-a', true, 0));
  await until(() => last(status) === 'online', { what: 'the greeting after the return' });
  expect(last(telemetry.topic)).toBeUndefined();
});

test('commands are heard, and answers told on a topic outside the site', async () => {
  await until(
    async () => {
      await listener.publishAsync(commandTopic, 'cut', { qos: 1 });
      return commands.length > 0;
    },
    { what: 'the command' },
  );
  expect(commands[0]).toBe('cut');
  publisher.tellState({ active: [] });
  await until(() => last(stateTopic) === '{"active":[]}', { what: 'the answer' });
});

test('faster than life, the telemetry of all gateways arrives in the order in which it was published', async () => {
  await publisher.close();
  heard.length = 0;
  publisher = await opened({ gateways: ['north-a', 'north-b'], inOrder: true });
  await until(() => publisher.takes, { what: 'the line of all' });
  const sent = Array.from({ length: 500 }, (_, i) => String(i));
  sent.forEach((payload, i) =>
    publisher.publish({ ...telemetry, payload, gateway: i % 2 === 0 ? 'north-a' : 'north-b' }),
  );
  const arrived = (): string[] => heard.filter(({ topic }) => topic === telemetry.topic).map(({ payload }) => payload);
  await until(() => arrived().length === sent.length, { what: 'all telemetry' });
  expect(arrived()).toEqual(sent);
});

test('faster than life, nothing is taken while the broker is behind, nor after the end', async () => {
  await publisher.close();
  heard.length = 0;
  publisher = await opened({ gateways: ['north-a'], inOrder: true });
  await until(() => publisher.takes, { what: 'the line of all' });
  // all in one go: the socket cannot have been emptied in between
  for (let i = 0; i < 100; i += 1) publisher.publish({ ...telemetry, payload: 'x'.repeat(100_000) });
  expect(publisher.takes).toBe(false);
  await until(() => publisher.takes, { what: 'the broker to have caught up' });
  await publisher.close();
  expect(publisher.takes).toBe(false);
});
