import { createConnection } from 'node:net';
import type { Duplex } from 'node:stream';
import { MqttClient, type IClientOptions } from 'mqtt';
import { acknowledgeAfterCommit } from './acknowledge-after-commit';
import type { BrokerAddress } from './broker-address';
import type { HeldAcknowledgements } from './held-acknowledgements';
import { OFFLINE } from './status-topic';

export interface Session {
  readonly clientId: string;
  readonly statusTopic: string;
  readonly address: BrokerAddress;
  readonly protocolVersion: 4 | 5;
  /** A broker of MQTT 5 keeps longer packets from us (MQTT 5.0, section 3.1.2.11.4); one of 3.1.1 can't be told. */
  readonly maximumPacketBytes: number;
}

/** For how long a broker of MQTT 5 keeps messages for us while we are away, s; one of 3.1.1 decides itself. */
const SESSION_KEPT_S = 86_400;

/**
 * One attempt to connect, without any retry of its own. The session is kept by the broker under the
 * client id, so that what was not acknowledged comes again.
 */
export function connectOnce(
  { clientId, statusTopic, address, protocolVersion, maximumPacketBytes }: Session,
  gate: HeldAcknowledgements,
): MqttClient {
  const options: IClientOptions = {
    clientId,
    protocolVersion,
    clean: false,
    reconnectPeriod: 0,
    connectTimeout: 10_000,
    keepalive: 20,
    resubscribe: false,
    queueQoSZero: false,
    will: { topic: statusTopic, payload: Buffer.from(OFFLINE), qos: 1, retain: true },
    ...(protocolVersion === 5
      ? { properties: { sessionExpiryInterval: SESSION_KEPT_S, maximumPacketSize: maximumPacketBytes } }
      : {}),
    ...(address.username === null ? {} : { username: address.username }),
    ...(address.password === null ? {} : { password: address.password }),
  };
  const open = (): Duplex =>
    acknowledgeAfterCommit(
      createConnection({ host: address.host, port: address.port, noDelay: true }),
      protocolVersion,
      gate,
    );
  return new MqttClient(open, options);
}
