import { resolve } from 'node:path';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { readAlarmsPerDay } from './alarm-target-environment';
import { readAlarmTopic } from './alarm-topic-environment';
import { edgeFaults, edgeVariables, readEdge, type EdgeEnvironment } from './edge-environment';
import { readJournalKeep } from './journal-keep';
import { openIdVariables, readOpenId, type OpenIdEnvironment } from './open-id-environment';
import { readFlag, readHost, readPort, readUrl, readWord, type Fault } from './read-variable';
import { secretVariables } from './secret-files';

/** Every variable of the environment, read once at the start. */
export interface Environment {
  readonly httpHost: string;
  readonly httpPort: number;
  readonly siteFile: string;
  /** The list of alarms as it was authorised; null: catalogue and site file are the list. */
  readonly alarmList: string | null;
  readonly dataFolder: string;
  /** Null: the embedded broker. May hold credentials; never printed. */
  readonly mqttUrl: string | null;
  /** Files for a secured connection to the broker; null where none is set. */
  readonly mqttFiles: MqttFiles;
  readonly mqttPort: number;
  /** False: the port is our own choice, and the next free one will do. */
  readonly mqttPortSet: boolean;
  /** First levels of the topics under which alarms are told; null: they are not told over MQTT. */
  readonly alarmTopic: string | null;
  /** What the operator is to be told a day, about and at most; left out: as usual. */
  readonly alarmsPerDay?: { readonly acceptable: number; readonly limit: number };
  /** For how many days rows of the journal can be searched before they are sealed; null: for ever. */
  readonly journalKeepDays: number | null;
  /** Null: the embedded history store. May hold credentials; never printed. */
  readonly influxUrl: string | null;
  /** How others reach the program and its broker. */
  readonly edge: EdgeEnvironment;
  /** Null: people sign in by password alone. */
  readonly openId: OpenIdEnvironment | null;
  readonly simulator: boolean;
  readonly clock: 'wall' | 'source';
  /** How lines of the log look. */
  readonly log: 'human' | 'json';
}

export interface MqttFiles {
  readonly ca: string | null;
  readonly certificate: string | null;
  readonly key: string | null;
}

export interface Places {
  /** Where relative paths start. */
  readonly workingFolder: string;
  readonly demoSiteFile: string;
  /** The authorised list that the demo site comes with; left out: none. */
  readonly demoAlarmList?: string;
}

type Variables = Readonly<Record<string, string | undefined>>;

/**
 * Reads and checks every variable. All faults are told at once, each by the name of its variable;
 * no value is ever part of a message, since it may be a secret in the wrong place.
 */
export function readEnvironment(variables: Variables, places: Places): Result<Environment, readonly Fault[]> {
  const faults: Fault[] = [];
  const value = (name: string): string | undefined => (variables[name] === '' ? undefined : variables[name]);
  const path = (name: string, otherwise: string): string => resolve(places.workingFolder, value(name) ?? otherwise);

  const file = (name: string): string | null => (value(name) === undefined ? null : path(name, ''));

  const siteFile = path('EBBLINE_SITE', places.demoSiteFile);
  const environment: Environment = {
    httpHost: readHost('EBBLINE_HTTP_HOST', value('EBBLINE_HTTP_HOST'), '127.0.0.1', faults),
    httpPort: readPort('EBBLINE_HTTP_PORT', value('EBBLINE_HTTP_PORT'), 8080, faults),
    siteFile,
    alarmList: file('EBBLINE_ALARM_LIST') ?? (siteFile === places.demoSiteFile ? (places.demoAlarmList ?? null) : null),
    dataFolder: path('EBBLINE_DATA', 'data'),
    mqttUrl: readUrl('EBBLINE_MQTT_URL', value('EBBLINE_MQTT_URL'), ['mqtt:', 'mqtts:', 'ws:', 'wss:', 'tcp:'], faults),
    mqttFiles: {
      ca: file('EBBLINE_MQTT_CA_FILE'),
      certificate: file('EBBLINE_MQTT_CERTIFICATE_FILE'),
      key: file('EBBLINE_MQTT_KEY_FILE'),
    },
    mqttPort: readPort('EBBLINE_MQTT_PORT', value('EBBLINE_MQTT_PORT'), 1883, faults),
    mqttPortSet: value('EBBLINE_MQTT_PORT') !== undefined,
    ...readAlarmsPerDay('EBBLINE_ALARMS_PER_DAY', value('EBBLINE_ALARMS_PER_DAY'), faults),
    alarmTopic: readAlarmTopic(
      'EBBLINE_ALARM_TOPIC',
      value('EBBLINE_ALARM_TOPIC'),
      value('EBBLINE_MQTT_URL') === undefined,
      faults,
    ),
    journalKeepDays: readJournalKeep('EBBLINE_JOURNAL_KEEP', value('EBBLINE_JOURNAL_KEEP'), faults),
    influxUrl: readUrl('EBBLINE_INFLUX_URL', value('EBBLINE_INFLUX_URL'), ['http:', 'https:'], faults),
    edge: readEdge(variables, places.workingFolder, faults),
    openId: readOpenId(variables, faults),
    simulator: readFlag('EBBLINE_SIMULATOR', value('EBBLINE_SIMULATOR'), siteFile === places.demoSiteFile, faults),
    clock: readWord('EBBLINE_CLOCK', value('EBBLINE_CLOCK'), ['wall', 'source'], faults),
    log: readWord('EBBLINE_LOG', value('EBBLINE_LOG'), ['human', 'json'], faults),
  };
  faults.push(...unknownNames(variables), ...tooOpen(environment), ...filesInVain(environment));
  return faults.length > 0 ? fail(faults) : ok(Object.freeze(environment));
}

const known: readonly string[] = [
  ...edgeVariables,
  ...openIdVariables,
  ...secretVariables.map((name) => `${name}_FILE`),
  'EBBLINE_HTTP_HOST',
  'EBBLINE_HTTP_PORT',
  'EBBLINE_SITE',
  'EBBLINE_ALARM_LIST',
  'EBBLINE_DATA',
  'EBBLINE_MQTT_URL',
  'EBBLINE_MQTT_CA_FILE',
  'EBBLINE_MQTT_CERTIFICATE_FILE',
  'EBBLINE_MQTT_KEY_FILE',
  'EBBLINE_MQTT_PORT',
  'EBBLINE_ALARM_TOPIC',
  'EBBLINE_ALARMS_PER_DAY',
  'EBBLINE_JOURNAL_KEEP',
  'EBBLINE_INFLUX_URL',
  'EBBLINE_SIMULATOR',
  'EBBLINE_CLOCK',
  'EBBLINE_LOG',
];

/** Settings of the simulator itself, and of the tests, are read elsewhere. */
const ofOthers = /^EBBLINE_(SIMULATOR_(SPEED|SEED|SCHEDULE)$|TEST_)/;

/** A misspelt variable would otherwise be a setting that silently does nothing. */
function unknownNames(variables: Variables): Fault[] {
  return Object.keys(variables)
    .filter((name) => name.startsWith('EBBLINE_') && !known.includes(name) && !ofOthers.test(name))
    .map((name) => ({
      variable: name,
      message: `is not a variable of Ebbline; the known ones are ${known.join(', ')}`,
    }));
}

/** Files that would be looked at by nobody are a mistake: someone believes that the connection is secured. */
function filesInVain({ mqttUrl, mqttFiles }: Environment): Fault[] {
  const names = {
    ca: 'EBBLINE_MQTT_CA_FILE',
    certificate: 'EBBLINE_MQTT_CERTIFICATE_FILE',
    key: 'EBBLINE_MQTT_KEY_FILE',
  };
  const set = (Object.keys(names) as (keyof MqttFiles)[]).filter((what) => mqttFiles[what] !== null);
  if (set.length > 0 && (mqttUrl === null || !/^(mqtts|wss):/i.test(mqttUrl)))
    return set.map((what) => ({
      variable: names[what],
      message: 'is for secured connections only: EBBLINE_MQTT_URL must begin with mqtts:// or wss://',
    }));
  return (mqttFiles.certificate === null) === (mqttFiles.key === null)
    ? []
    : [
        {
          variable: mqttFiles.key === null ? names.key : names.certificate,
          message: 'is missing: a certificate and its key go together',
        },
      ];
}

const tooOpen = ({ httpHost, mqttUrl, edge }: Environment): Fault[] =>
  edgeFaults(edge, { httpHost, brokerElsewhere: mqttUrl !== null });
