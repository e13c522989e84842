import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { Environment } from '../connections/config/environment';
import { followCertificate } from '../connections/config/renewed-certificate';
import { readServerCertificate, type ServerCertificate } from '../connections/config/server-certificate';
import { whoHoldsPort } from '../connections/config/who-holds-port';
import { BoundedNotes } from '../connections/embedded-broker/bounded-notes';
import type { BrokerLimits } from '../connections/embedded-broker/broker-limits';
import { startEmbeddedBroker, type EmbeddedBroker } from '../connections/embedded-broker/embedded-broker';
import { Hashing } from '../connections/people/hashing';
import { usualCost } from '../connections/people/password-hash';
import { memoryRateLimits } from '../connections/rate-limits/memory-rate-limits';
import { lineText } from '../connections/site-files/line-fault';
import { readBrokerAccess } from '../connections/site-files/read-broker-access';
import type { BrokerUser, PasswordCheck } from '../ports/broker-access';
import type { Ticker } from '../ports/ticker';
import type { ClosingStack } from './closing-stack';
import { StartFault } from './start-fault';

/** Who will use the broker, and for what. */
export interface BrokerUse {
  readonly clientId: string;
  /** A filter of topics that nobody else may write; null: there are none. */
  readonly ownTopics: string | null;
  readonly limits: BrokerLimits;
  readonly ticker: Ticker;
  readonly say: (line: string) => void;
}

const names = { certificate: 'EBBLINE_BROKER_CERTIFICATE_FILE', key: 'EBBLINE_BROKER_KEY_FILE' };

/** The broker of our own, with who may come and how as the settings say. */
export async function openEmbeddedBroker(
  { mqttPort, mqttPortSet, edge }: Environment,
  { clientId, ownTopics, limits, ticker, say }: BrokerUse,
  closing: ClosingStack,
): Promise<EmbeddedBroker> {
  const users = edge.brokerAccessFile === null ? null : usersOf(edge.brokerAccessFile);
  const certificate = edge.brokerTls === null ? null : readServerCertificate(edge.brokerTls, names);
  if (certificate?.ok === false) throw new StartFault([certificate.fault]);
  try {
    const broker = await startEmbeddedBroker({
      host: edge.mqttHost,
      port: mqttPort,
      portSet: mqttPortSet,
      certificate: certificate === null ? null : certificate.value,
      limits,
      heardWithinMs: 8000,
      access: {
        users,
        ownClientId: clientId,
        ownTopics,
        passwords: passwordCheck(),
        attempts: memoryRateLimits(),
        notes: new BoundedNotes(say, () => performance.now()),
      },
    });
    closing.add(() => broker.close());
    if (edge.brokerTls !== null) {
      const use = (renewed: ServerCertificate): void => broker.renew(renewed);
      const following = followCertificate({ files: edge.brokerTls, names, ticker, say, use });
      closing.add(() => following.stop());
    }
    return broker;
  } catch (error) {
    throw brokerStartFault(error, { port: mqttPort, set: mqttPortSet, host: edge.mqttHost });
  }
}

function usersOf(file: string): readonly BrokerUser[] {
  const read = readBrokerAccess(file);
  if (read.ok) return read.value;
  throw new StartFault(['EBBLINE_BROKER_ACCESS_FILE:', ...read.fault.map((fault) => lineText(file, fault))]);
}

function passwordCheck(): PasswordCheck {
  const hashing = new Hashing(usualCost);
  return {
    async check(hash, password) {
      const answer = await hashing.check(hash, password);
      return typeof answer === 'symbol' ? 'later' : answer;
    },
  };
}

function brokerStartFault(error: unknown, { port, set, host }: { port: number; set: boolean; host: string }): unknown {
  if (error instanceof CodedError && error.code === 'BROKER_PORT_TAKEN')
    return new StartFault([
      `The MQTT port ${port} is taken${heldBy(port)}${set ? '' : ', and so are those after it'}.`,
      'End that program, or set EBBLINE_MQTT_PORT to a free port, or EBBLINE_MQTT_URL to a broker that runs already.',
    ]);
  switch ((error as NodeJS.ErrnoException).code) {
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
      return new StartFault([`${host} is no address of this machine.`, 'Set EBBLINE_MQTT_HOST to 127.0.0.1.']);
    default:
      return error;
  }
}

/** For a message: by which program a port is held, where that is known. */
export function heldBy(port: number): string {
  const holder = whoHoldsPort(port);
  return holder === null ? '' : ` by ${holder}`;
}
