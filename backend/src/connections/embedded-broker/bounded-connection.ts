import type { Socket } from 'node:net';
import { Duplex } from 'node:stream';
import type { BrokerLimits } from './broker-limits';
import { PacketLengths } from './packet-lengths';

/** A client's connection as the broker sees it: it breaks before a packet that is too long is held. */
export function boundedConnection(
  socket: Socket,
  { packetBytes, unsentBytes }: Pick<BrokerLimits, 'packetBytes' | 'unsentBytes'>,
): Duplex {
  const lengths = new PacketLengths(packetBytes);
  const whenTaken = (done: () => void): void => {
    if (socket.writableNeedDrain && !socket.destroyed) socket.once('drain', done);
    else done();
  };
  const stream = new Duplex({
    // The broker waits for nobody below this mark, and disconnects at it.
    writableHighWaterMark: 2 * unsentBytes,
    read: () => void socket.resume(),
    write(chunk: Uint8Array, _encoding, done) {
      socket.write(chunk);
      whenTaken(() => done());
    },
    writev(chunks, done) {
      socket.cork();
      for (const { chunk } of chunks) socket.write(chunk as Uint8Array);
      socket.uncork();
      whenTaken(() => done());
    },
    final(done) {
      socket.end(done);
    },
    destroy(error, done) {
      socket.destroy();
      done(error);
    },
  });
  socket.on('data', (chunk: Buffer) => {
    if (!lengths.allows(chunk)) stream.destroy(new Error(`a packet is longer than ${packetBytes} bytes`));
    else if (!stream.push(chunk)) socket.pause();
  });
  socket.once('end', () => stream.push(null));
  socket.once('error', (error) => stream.destroy(error));
  socket.once('close', () => stream.destroy());
  return stream;
}
