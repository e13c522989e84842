import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { Environment } from '../connections/config/environment';
import { whoHoldsPort } from '../connections/config/who-holds-port';
import type { BrokerLimits } from '../connections/embedded-broker/broker-limits';
import { startEmbeddedBroker } from '../connections/embedded-broker/embedded-broker';
import { brokerAddress, isSecured, type BrokerAddress } from '../connections/mqtt-intake/broker-address';
import { readTlsFiles, type TlsFiles } from '../connections/mqtt-intake/tls-files';
import type { ClosingStack } from './closing-stack';
import { StartFault } from './start-fault';

export interface BrokerInUse {
  readonly address: BrokerAddress;
  /** Null where the connection is not secured. */
  readonly tlsFiles: TlsFiles | null;
  /** For the programs that this one starts; may hold credentials, never printed. */
  readonly url: string;
  readonly note: string | null;
}

/** Who will use the broker, and for what. */
export interface BrokerUse {
  readonly clientId: string;
  readonly limits: BrokerLimits;
}

/** The broker of the environment, or one of our own on this machine. */
export async function openBroker(
  environment: Environment,
  { clientId, limits }: BrokerUse,
  closing: ClosingStack,
): Promise<BrokerInUse> {
  const { mqttUrl, mqttPort, mqttPortSet } = environment;
  if (mqttUrl !== null) {
    const address = brokerAddress(mqttUrl);
    const tlsFiles = isSecured(address.transport) ? environment.mqttFiles : null;
    const readable = tlsFiles === null ? null : readTlsFiles(tlsFiles);
    if (readable?.ok === false) throw new StartFault([readable.fault]);
    return { address, tlsFiles, url: mqttUrl, note: null };
  }
  try {
    const broker = await startEmbeddedBroker({
      port: mqttPort,
      portSet: mqttPortSet,
      limits,
      ownClientId: clientId,
    });
    closing.add(() => broker.close());
    const url = `mqtt://127.0.0.1:${broker.port}`;
    const moved = mqttPort !== 0 && broker.port !== mqttPort;
    return {
      address: { ...brokerAddress(url), embedded: true },
      tlsFiles: null,
      url,
      note: moved ? `port ${mqttPort} was taken${heldBy(mqttPort)}, ${broker.port} is used` : null,
    };
  } catch (error) {
    if (error instanceof CodedError && error.code === 'BROKER_PORT_TAKEN') throw taken(mqttPort, mqttPortSet);
    throw error;
  }
}

function taken(port: number, set: boolean): StartFault {
  return new StartFault([
    `The MQTT port ${port} is taken${heldBy(port)}${set ? '' : ', and so are those after it'}.`,
    'End that program, or set EBBLINE_MQTT_PORT to a free port, or EBBLINE_MQTT_URL to a broker that runs already.',
  ]);
}

function heldBy(port: number): string {
  const holder = whoHoldsPort(port);
  return holder === null ? '' : ` by ${holder}`;
}
