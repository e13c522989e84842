import { Duplex } from 'node:stream';
import { generate, parser, type Packet } from 'mqtt-packet';
import type { HeldAcknowledgements } from './held-acknowledgements';

/**
 * The connection as the MQTT client sees it, with one difference: a PUBACK that the client writes is held
 * back until the message is committed. The client itself hands on one message after another and would
 * stand still if it had to wait for each commit; so it is left to run on, and only the wire waits.
 * A kill before the commit leaves the message unacknowledged, and the broker delivers it again
 * (MQTT 3.1.1 and 5.0, section 4.3.2). The order of PUBACKs is kept [MQTT-4.6.0-2].
 */
export function acknowledgeAfterCommit(socket: Duplex, protocolVersion: 4 | 5, gate: HeldAcknowledgements): Duplex {
  const packets = parser({ protocolVersion });
  const send = (bytes: Uint8Array): void => {
    if (!socket.destroyed) socket.write(bytes);
  };
  packets.on('packet', (packet: Packet) => {
    const bytes = generate(packet, { protocolVersion });
    if (packet.cmd === 'puback') gate.hold(socket, bytes, send);
    else send(bytes);
  });

  const stream = new Duplex({
    read: () => void socket.resume(),
    write(chunk: Uint8Array, _encoding, done) {
      packets.parse(Buffer.from(chunk.buffer, chunk.byteOffset, chunk.byteLength));
      if (socket.writableNeedDrain && !socket.destroyed) socket.once('drain', () => done());
      else done();
    },
    final(done) {
      socket.end(done);
    },
    destroy(error, done) {
      gate.forget(socket);
      socket.destroy();
      done(error);
    },
  });
  packets.on('error', (error: Error) => stream.destroy(error));
  socket.on('data', (chunk) => {
    if (!stream.push(chunk)) socket.pause();
  });
  socket.once('end', () => stream.push(null));
  socket.once('error', (error) => stream.destroy(error));
  socket.once('close', () => stream.destroy());
  return stream;
}
