import { isIP } from 'node:net';
import { resolve } from 'node:path';
import { isLoopbackHost } from './is-loopback';
import { readHost, readUrl, type Fault } from './read-variable';

/** A certificate (with its chain) and its private key, both files in PEM. */
export interface CertificateFiles {
  readonly certificate: string;
  readonly key: string;
}

/** How this program is reached by others. */
export interface EdgeEnvironment {
  /** For screens and API; null: HTTP without TLS. */
  readonly tls: CertificateFiles | null;
  /** Addresses and ranges of proxies whose forwarding headers are believed. */
  readonly proxies: readonly string[];
  /** Origin such as https://hall.example; null where none is set. */
  readonly publicUrl: string | null;
  /** Where the embedded broker listens for others. */
  readonly mqttHost: string;
  /** Who may come to the embedded broker, and to which topics; null: whoever reaches it. */
  readonly brokerAccessFile: string | null;
  /** Of the embedded broker; null: without TLS. */
  readonly brokerTls: CertificateFiles | null;
}

type Variables = Readonly<Record<string, string | undefined>>;

/** The variables of the edge, each by itself; what they mean together is judged by `edgeFaults`. */
export function readEdge(variables: Variables, workingFolder: string, faults: Fault[]): EdgeEnvironment {
  const value = (name: string): string | undefined => (variables[name] === '' ? undefined : variables[name]);
  const file = (name: string): string | null => {
    const text = value(name);
    return text === undefined ? null : resolve(workingFolder, text);
  };
  const pair = (certificateName: string, keyName: string): CertificateFiles | null => {
    const certificate = file(certificateName);
    const key = file(keyName);
    if (certificate !== null && key !== null) return { certificate, key };
    if (certificate !== null || key !== null)
      faults.push({
        variable: key === null ? keyName : certificateName,
        message: 'is missing: a certificate and its key go together',
      });
    return null;
  };
  return {
    tls: pair('EBBLINE_TLS_CERTIFICATE_FILE', 'EBBLINE_TLS_KEY_FILE'),
    proxies: readProxies(value('EBBLINE_PROXY'), faults),
    publicUrl: readOrigin(value('EBBLINE_PUBLIC_URL'), faults),
    mqttHost: readHost('EBBLINE_MQTT_HOST', value('EBBLINE_MQTT_HOST'), '127.0.0.1', faults),
    brokerAccessFile: file('EBBLINE_BROKER_ACCESS_FILE'),
    brokerTls: pair('EBBLINE_BROKER_CERTIFICATE_FILE', 'EBBLINE_BROKER_KEY_FILE'),
  };
}

/** Addresses or ranges, separated by commas; names are not looked up, since whoever answers for a name could then forge. */
function readProxies(text: string | undefined, faults: Fault[]): readonly string[] {
  if (text === undefined) return [];
  const list = text.split(',').map((one) => one.trim());
  if (list.every(isAddressOrRange)) return list;
  faults.push({
    variable: 'EBBLINE_PROXY',
    message: 'must be the addresses of the proxies, separated by commas, such as 10.0.0.5 or 10.0.0.0/28',
  });
  return [];
}

function isAddressOrRange(text: string): boolean {
  const [address = '', bits, ...more] = text.split('/');
  const longest = { 0: -1, 4: 32, 6: 128 }[isIP(address) as 0 | 4 | 6];
  if (more.length > 0 || longest < 0) return false;
  // A range of everything would believe everyone.
  return bits === undefined || (/^\d{1,3}$/.test(bits) && Number(bits) >= 8 && Number(bits) <= longest);
}

function readOrigin(text: string | undefined, faults: Fault[]): string | null {
  const read = readUrl('EBBLINE_PUBLIC_URL', text, ['https:', 'http:'], faults);
  if (read === null) return null;
  const { origin, pathname, search, hash, username, password } = new URL(read);
  if (pathname === '/' && `${search}${hash}${username}${password}` === '') return origin;
  faults.push({
    variable: 'EBBLINE_PUBLIC_URL',
    message: 'must be without path, name and password, such as https://hall.example',
  });
  return null;
}

/** What else is set that the edge depends on. */
export interface BesideEdge {
  readonly httpHost: string;
  /** True: a broker elsewhere is used, and none of our own runs. */
  readonly brokerElsewhere: boolean;
}

/** Whatever would let others in without a secured way, or is set in vain. Whether there is an admin is asked later. */
export function edgeFaults(edge: EdgeEnvironment, { httpHost, brokerElsewhere }: BesideEdge): Fault[] {
  const { tls, proxies, publicUrl, mqttHost, brokerAccessFile, brokerTls } = edge;
  const faults: Fault[] = [];
  const refuse = (variable: string, message: string): void => void faults.push({ variable, message });
  const open = httpHost !== '' && !isLoopbackHost(httpHost);
  const reached = open || proxies.length > 0;
  if (open && tls === null && proxies.length === 0)
    refuse(
      'EBBLINE_HTTP_HOST',
      'lets other machines in: set EBBLINE_TLS_CERTIFICATE_FILE and EBBLINE_TLS_KEY_FILE, or put a proxy with TLS before it and name its address in EBBLINE_PROXY; or listen on 127.0.0.1',
    );
  if (reached && publicUrl === null)
    refuse(
      'EBBLINE_PUBLIC_URL',
      'is missing: the address under which browsers reach the program, such as https://hall.example',
    );
  if (publicUrl?.startsWith('http:') === true && (reached || tls !== null))
    refuse('EBBLINE_PUBLIC_URL', 'must begin with https://, since sessions are kept over TLS only');
  if (brokerElsewhere) {
    const inVain = [
      ['EBBLINE_MQTT_HOST', mqttHost !== '127.0.0.1'],
      ['EBBLINE_BROKER_ACCESS_FILE', brokerAccessFile !== null],
      ['EBBLINE_BROKER_CERTIFICATE_FILE', brokerTls !== null],
    ] as const;
    for (const [variable, set] of inVain)
      if (set) refuse(variable, 'is for the embedded broker, which does not run where EBBLINE_MQTT_URL is set');
  } else if (mqttHost !== '' && !isLoopbackHost(mqttHost)) {
    const missing = [
      ...(brokerAccessFile === null ? ['EBBLINE_BROKER_ACCESS_FILE'] : []),
      ...(brokerTls === null ? ['EBBLINE_BROKER_CERTIFICATE_FILE and EBBLINE_BROKER_KEY_FILE'] : []),
    ];
    if (missing.length > 0)
      refuse(
        'EBBLINE_MQTT_HOST',
        `lets other machines send values: set ${missing.join(' and ')}, or listen on 127.0.0.1`,
      );
  }
  return faults;
}

/** For the list of names that are known. */
export const edgeVariables: readonly string[] = [
  'EBBLINE_TLS_CERTIFICATE_FILE',
  'EBBLINE_TLS_KEY_FILE',
  'EBBLINE_PROXY',
  'EBBLINE_PUBLIC_URL',
  'EBBLINE_MQTT_HOST',
  'EBBLINE_BROKER_ACCESS_FILE',
  'EBBLINE_BROKER_CERTIFICATE_FILE',
  'EBBLINE_BROKER_KEY_FILE',
];
