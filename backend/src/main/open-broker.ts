import type { Environment } from '../connections/config/environment';
import { brokerAddress, isSecured, type BrokerAddress } from '../connections/mqtt-intake/broker-address';
import { readTlsFiles, type TlsFiles } from '../connections/mqtt-intake/tls-files';
import type { BrokerRefusal } from '../ports/broker-access';
import type { ClosingStack } from './closing-stack';
import { heldBy, openEmbeddedBroker, type BrokerUse } from './open-embedded-broker';
import { StartFault } from './start-fault';

export interface BrokerInUse {
  readonly address: BrokerAddress;
  /** Null where the connection is not secured. */
  readonly tlsFiles: TlsFiles | null;
  /** For ourselves; may hold credentials, never printed. */
  readonly ownUrl: string;
  /** For the simulator; may hold credentials, never printed. */
  readonly simulatorUrl: string;
  /** Where others come to, without credentials of this program's own. */
  readonly url: string;
  readonly note: string | null;
  /** What the embedded broker refused; null where it is not ours. */
  readonly refused: (() => Readonly<Record<BrokerRefusal, number>>) | null;
}

/** The broker of the environment, or one of our own. */
export async function openBroker(
  environment: Environment,
  use: BrokerUse,
  closing: ClosingStack,
): Promise<BrokerInUse> {
  const { mqttUrl, mqttPort, edge } = environment;
  if (mqttUrl !== null) {
    const address = brokerAddress(mqttUrl);
    const tlsFiles = isSecured(address.transport) ? environment.mqttFiles : null;
    const readable = tlsFiles === null ? null : readTlsFiles(tlsFiles);
    if (readable?.ok === false) throw new StartFault([readable.fault]);
    return { address, tlsFiles, ownUrl: mqttUrl, simulatorUrl: mqttUrl, url: mqttUrl, note: null, refused: null };
  }
  const broker = await openEmbeddedBroker(environment, use, closing);
  const moved = mqttPort !== 0 && broker.port !== mqttPort;
  const { host, port } = { host: edge.mqttHost, port: broker.port };
  const text = `${host.includes(':') ? `[${host}]` : host}:${port}`;
  const elsewhere = brokerAddress(broker.ownUrl).port !== port;
  const notes = [
    ...(moved ? [`port ${mqttPort} was taken${heldBy(mqttPort)}, ${port} is used`] : []),
    ...(elsewhere ? [`others come to ${text}${edge.brokerTls === null ? '' : ' over TLS'}`] : []),
  ];
  return {
    address: { ...brokerAddress(broker.ownUrl), embedded: true },
    tlsFiles: null,
    ownUrl: broker.ownUrl,
    simulatorUrl: broker.simulatorUrl,
    url: `${edge.brokerTls === null ? 'mqtt' : 'mqtts'}://${text}`,
    note: notes.length === 0 ? null : notes.join('; '),
    refused: () => broker.refused(),
  };
}
