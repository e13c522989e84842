import { readEnvironment, type Environment } from '../connections/config/environment';
import { openSecretWarnings } from '../connections/config/readable-by-all';
import { readSecretFiles, secretVariables } from '../connections/config/secret-files';
import { StartFault } from './start-fault';

interface Given {
  readonly variables: Readonly<Record<string, string | undefined>>;
  readonly workingFolder: string;
  readonly demoSiteFile: string;
  readonly demoAlarmList?: string;
  readonly say: (line: string) => void;
}

/** The settings, with secrets that are given as files. Throws `StartFault` with all that is wrong with them. */
export function environmentOf({ variables, say, ...places }: Given): Environment {
  const secrets = readSecretFiles(variables, places.workingFolder);
  const read = readEnvironment(secrets.variables, places);
  const faults = [...secrets.faults, ...(read.ok ? [] : read.fault)];
  if (!read.ok || faults.length > 0)
    throw new StartFault(faults.map(({ variable, message }) => `${variable} ${message}`));
  openSecretWarnings(secretFiles(variables, read.value)).forEach(say);
  return read.value;
}

/** Every file that holds something others should not read, with the variable that names it. */
function secretFiles(variables: Given['variables'], { mqttFiles, edge }: Environment) {
  const named = [
    ...secretVariables.map((name) => [`${name}_FILE`, variables[`${name}_FILE`] ?? null] as const),
    ['EBBLINE_MQTT_KEY_FILE', mqttFiles.key],
    ['EBBLINE_TLS_KEY_FILE', edge.tls?.key ?? null],
    ['EBBLINE_BROKER_KEY_FILE', edge.brokerTls?.key ?? null],
    ['EBBLINE_BROKER_ACCESS_FILE', edge.brokerAccessFile],
  ] as const;
  return named.flatMap(([variable, path]) => (path === null || path === '' ? [] : [{ variable, path }]));
}
