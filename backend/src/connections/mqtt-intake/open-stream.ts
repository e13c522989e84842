import { createConnection, isIP } from 'node:net';
import type { Duplex } from 'node:stream';
import { connect as connectTls } from 'node:tls';
import { createWebSocketStream, WebSocket } from 'ws';
import { hostAndPort, isSecured, isWebsocket, type BrokerAddress } from './broker-address';
import type { TlsMaterial } from './tls-files';

/**
 * The bytes to and from a broker. Secured ones check the certificate's chain, time and name, always: said here, so that no
 * variable of the environment can turn it off. MQTT over websockets has the subprotocol `mqtt` [MQTT-6.0.0-3].
 */
export function openStream(address: BrokerAddress, material: TlsMaterial): Duplex {
  const { transport, host, port, path } = address;
  const secured = { ...material, rejectUnauthorized: true, servername: isIP(host) === 0 ? host : '' };
  if (isWebsocket(transport)) {
    const url = `${transport}://${hostAndPort(address)}${path}`;
    const socket = new WebSocket(url, 'mqtt', {
      perMessageDeflate: false,
      handshakeTimeout: 10_000,
      ...(isSecured(transport) ? secured : {}),
    });
    return createWebSocketStream(socket);
  }
  if (!isSecured(transport)) return createConnection({ host, port, noDelay: true });
  const socket = connectTls({ host, port, minVersion: 'TLSv1.2', ...secured });
  socket.setNoDelay(true);
  return socket;
}
