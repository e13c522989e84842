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
  publisher = new MqttPublisher({
    url: broker.url,
    gateways: ['north-a'],
    onCommand: (payload) => commands.push(payload),
    onTrouble: () => undefined,
  });
  publisher.open();
  await until(() => last(status) === 'online', { what: 'the greeting' });
});

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
