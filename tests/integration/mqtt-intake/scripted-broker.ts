import { createServer, type AddressInfo, type Socket } from 'node:net';
import { generate, parser, type ISubscribePacket } from 'mqtt-packet';

export interface ScriptedBroker {
  readonly url: string;
  /** The filters of each packet that asked for some, in their order. */
  readonly asked: readonly (readonly string[])[];
  /** What it lets nobody hear. */
  readonly refused: Set<string>;
  /** From now on it says nothing, and holds its end of every connection. */
  fallSilent(): void;
  /** How many connections it holds. */
  held(): number;
  stop(): Promise<void>;
}

/** A broker of MQTT 3.1.1 that lets everybody in, keeps nothing, and answers as the test says. */
export async function scriptedBroker(): Promise<ScriptedBroker> {
  const sockets = new Set<Socket>();
  const asked: string[][] = [];
  const refused = new Set<string>();
  let isSilent = false;
  const server = createServer({ allowHalfOpen: true }, (socket) => {
    sockets.add(socket);
    socket.on('error', () => undefined);
    socket.on('close', () => sockets.delete(socket));
    const packets = parser();
    socket.on('data', (chunk) => {
      if (!isSilent) packets.parse(chunk);
    });
    socket.on('end', () => {
      if (!isSilent) socket.end();
    });
    const subscribed = ({ messageId, subscriptions }: ISubscribePacket): void => {
      const filters = subscriptions.map(({ topic }) => topic);
      asked.push(filters);
      const granted = filters.map((filter) => (refused.has(filter) ? 0x80 : 1));
      socket.write(generate({ cmd: 'suback', messageId: messageId ?? 0, granted }));
    };
    packets.on('packet', (packet) => {
      if (packet.cmd === 'connect' && packet.protocolVersion === 5) socket.destroy();
      else if (packet.cmd === 'connect')
        socket.write(generate({ cmd: 'connack', returnCode: 0, sessionPresent: false }));
      else if (packet.cmd === 'subscribe') subscribed(packet);
      else if (packet.cmd === 'unsubscribe')
        socket.write(generate({ cmd: 'unsuback', messageId: packet.messageId ?? 0 } as Parameters<typeof generate>[0]));
      else if (packet.cmd === 'publish' && packet.qos === 1)
        socket.write(generate({ cmd: 'puback', messageId: packet.messageId ?? 0 }));
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    url: `mqtt://127.0.0.1:${(server.address() as AddressInfo).port}`,
    asked,
    refused,
    fallSilent: () => {
      isSilent = true;
    },
    held: () => sockets.size,
    stop: async () => {
      for (const socket of sockets) socket.destroy();
      await new Promise<void>((resolve) => server.close(() => resolve()));
    },
  };
}
