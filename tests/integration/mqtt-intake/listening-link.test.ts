import { expect, it } from 'vitest';
import { PacketLengths } from '../../../backend/src/connections/embedded-broker/packet-lengths';
import { brokerAddress } from '../../../backend/src/connections/mqtt-intake/broker-address';
import { ListeningLink } from '../../../backend/src/connections/mqtt-intake/listening-link';
import { connectClient, startBroker } from '../../helpers/broker';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';

const keep = stopAfterAll();

it('ends a link for listening before a message of any length is held, and says why', async () => {
  const broker = keep(await startBroker());
  const { client } = keep(await connectClient(broker));
  const address = brokerAddress(broker.url);
  const packetBytes = 100_000;
  const link = keep(
    new ListeningLink({
      ...{ address, tlsFiles: null, clientId: 'listens', random: () => 0.5, packetBytes },
      lengths: () => new PacketLengths(packetBytes),
    }),
  );
  const heard: number[] = [];
  link.listen('works/#', (_topic, payload) => heard.push(payload.length));
  const short = async () => {
    await client.publishAsync('works/short', Buffer.alloc(90_000));
    return heard.includes(90_000);
  };
  await until(short, { what: 'a message that is short enough' });
  expect(link.trouble()).toBeNull();
  const long = async () => {
    await client.publishAsync('works/long', Buffer.alloc(100_001));
    return link.trouble();
  };
  expect(await until(long, { what: 'trouble' })).toContain('a message there is longer than 100000 bytes');
  expect(heard.every((length) => length === 90_000)).toBe(true);
});
