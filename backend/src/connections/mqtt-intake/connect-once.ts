import type { Duplex } from 'node:stream';
import { MqttClient, type IClientOptions } from 'mqtt';
import { acknowledgeAfterCommit } from './acknowledge-after-commit';
import type { BrokerAddress } from './broker-address';
import type { HeldAcknowledgements } from './held-acknowledgements';
import { openWire } from './open-wire';
import { OFFLINE } from './status-topic';
import type { TlsFiles } from './tls-files';

export interface Session {
  readonly clientId: string;
  readonly statusTopic: string;
  readonly address: BrokerAddress;
  /** Null where the connection is not secured. */
  readonly tlsFiles: TlsFiles | null;
  readonly protocolVersion: 4 | 5;
  /** A broker of MQTT 5 keeps longer packets from us (MQTT 5.0, section 3.1.2.11.4); one of 3.1.1 can't be told. */
  readonly maximumPacketBytes: number;
  /** A connection on which nothing comes back for one and a half times as long is taken for gone, s; 20 where nothing is said. */
  readonly keepaliveS?: number;
  /** So long a broker may take to let us in, ms; 10,000 where nothing is said. */
  readonly connectWithinMs?: number;
}

/** For how long a broker of MQTT 5 keeps messages for us while we are away, s; one of 3.1.1 decides itself. */
const SESSION_KEPT_S = 86_400;

/**
 * One attempt to connect, without any retry of its own. The session is kept by the broker under the
 * client id, so that what was not acknowledged comes again.
 */
export function connectOnce(session: Session, gate: HeldAcknowledgements, failed: (error: Error) => void): MqttClient {
  const { clientId, statusTopic, address, tlsFiles, protocolVersion, maximumPacketBytes } = session;
  const { keepaliveS = 20, connectWithinMs = 10_000 } = session;
  const options: IClientOptions = {
    clientId,
    protocolVersion,
    clean: false,
    reconnectPeriod: 0,
    connectTimeout: connectWithinMs,
    keepalive: keepaliveS,
    resubscribe: false,
    queueQoSZero: false,
    will: { topic: statusTopic, payload: Buffer.from(OFFLINE), qos: 1, retain: true },
    ...(protocolVersion === 5
      ? { properties: { sessionExpiryInterval: SESSION_KEPT_S, maximumPacketSize: maximumPacketBytes } }
      : {}),
    ...(address.username === null ? {} : { username: address.username }),
    ...(address.password === null ? {} : { password: address.password }),
  };
  const open = (): Duplex => acknowledgeAfterCommit(openWire(address, tlsFiles, failed), protocolVersion, gate);
  return new MqttClient(open, options);
}
