import { fail, ok, type Failure, type Result } from '@ebbline/shared/errors/result';

/** Every variable of the simulator, read once at the start. */
export interface SimulatorEnvironment {
  /** May hold credentials; never printed. */
  readonly mqttUrl: string;
  /** How many times faster than life. */
  readonly speed: number;
  readonly seed: number;
  /** Path of a schedule file; null: none. */
  readonly scheduleFile: string | null;
}

type Variables = Readonly<Record<string, string | undefined>>;
type EnvironmentFault = Failure<'ENVIRONMENT'>;

const fastest = 600;

/**
 * All faults at once, each by the name of its variable; no value is part of a message.
 * @param readFile what stands in a file; throws where it can't be read
 */
export function readEnvironment(
  variables: Variables,
  readFile: (path: string) => string,
): Result<SimulatorEnvironment, readonly EnvironmentFault[]> {
  const faults: EnvironmentFault[] = [];
  const refuse = (name: string, message: string): void => {
    faults.push({ code: 'ENVIRONMENT', message: `${name} ${message}` });
  };
  const secret = (path: string): string => {
    try {
      return readFile(path).trim();
    } catch {
      refuse('EBBLINE_MQTT_URL_FILE', 'names no file that can be read; set it to a file with the address in one line');
      return '';
    }
  };
  // Where the backend starts the simulator, it hands over the address itself beside all that it was given.
  const fromFile = variables.EBBLINE_MQTT_URL ? '' : (variables.EBBLINE_MQTT_URL_FILE ?? '');
  const given = fromFile === '' ? variables.EBBLINE_MQTT_URL : secret(fromFile);
  const mqttUrl = given || 'mqtt://127.0.0.1:1883';
  if (!URL.canParse(mqttUrl) || !['mqtt:', 'tcp:'].includes(new URL(mqttUrl).protocol)) {
    refuse('EBBLINE_MQTT_URL', 'is no address of a broker; set it like mqtt://127.0.0.1:1883');
  }
  const speed = Number(variables.EBBLINE_SIMULATOR_SPEED || '1');
  if (!(speed >= 0.1 && speed <= fastest))
    refuse('EBBLINE_SIMULATOR_SPEED', `has to be a number from 0.1 to ${fastest}`);
  const seed = Number(variables.EBBLINE_SIMULATOR_SEED || '1');
  if (!Number.isInteger(seed) || Math.abs(seed) > 2 ** 31 - 1)
    refuse('EBBLINE_SIMULATOR_SEED', 'has to be a whole number of at most 31 bits');
  const scheduleFile = variables.EBBLINE_SIMULATOR_SCHEDULE || null;
  return faults.length > 0 ? fail(faults) : ok(Object.freeze({ mqttUrl, speed, seed, scheduleFile }));
}
