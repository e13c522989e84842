import { PassThrough, type Duplex } from 'node:stream';
import { ok } from '@ebbline/shared/errors/result';
import type { BrokerAddress } from './broker-address';
import { openStream } from './open-stream';
import { readTlsFiles, type TlsFiles } from './tls-files';

/**
 * The bytes to and from a broker, with the files of a secured connection read anew.
 * @param tlsFiles null where the connection is not secured
 * @param failed hears of every fault: the client itself tells of some faults of its stream only
 */
export function openWire(address: BrokerAddress, tlsFiles: TlsFiles | null, failed: (error: Error) => void): Duplex {
  const material = tlsFiles === null ? ok({}) : readTlsFiles(tlsFiles);
  const socket = material.ok ? openStream(address, material.value) : brokenStream(material.fault);
  socket.once('error', failed);
  return socket;
}

/** Fails as a connection would, after whoever opened it can hear of it. */
function brokenStream(why: string): Duplex {
  const stream = new PassThrough();
  setImmediate(() => stream.destroy(new Error(why)));
  return stream;
}
