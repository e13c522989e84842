import { connectAsync } from 'mqtt';
import { expect, it } from 'vitest';
import { startEmbeddedBroker } from '../../../backend/src/connections/embedded-broker/embedded-broker';
import { connectClient } from '../../helpers/broker';
import { embeddedPlace } from '../../helpers/embedded-place';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';

const keep = stopAfterEach();
const { ownClientId } = embeddedPlace().access;
const opened = async (heardWithinMs: number) => {
  const broker = await startEmbeddedBroker(embeddedPlace({ heardWithinMs }));
  keep({ stop: () => broker.close() });
  return { broker, url: `mqtt://127.0.0.1:${broker.port}` };
};

it('confirms nothing to a gateway before the program hears, and then loses none of it', async () => {
  const { broker, url } = await opened(60_000);
  const gateway = connectClient({ url });
  let isIn = false;
  void gateway.then(() => (isIn = true));
  const own = keep(await connectClient({ url: broker.ownUrl }, { clientId: ownClientId })).client;
  const heard: string[] = [];
  own.on('message', (_topic, payload) => heard.push(payload.toString()));
  // Connected is not yet heard: only the topics that are asked for make it so.
  expect(isIn).toBe(false);
  await own.subscribeAsync('works/#', { qos: 1 });
  await keep(await gateway).client.publishAsync('works/flow', '345', { qos: 1 });
  await until(() => heard.length > 0, { what: 'what the gateway sent' });
  expect(heard).toEqual(['345']);
});

it('sends a gateway away where the program hears nothing for too long, and it may come again', async () => {
  const { url } = await opened(1);
  // Return code 3: the server is not available (MQTT 3.1.1, table 3.1).
  await expect(connectAsync(url, { reconnectPeriod: 0 })).rejects.toMatchObject({ code: 3 });
});
