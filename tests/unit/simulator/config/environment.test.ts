import { expect, test } from 'vitest';
import { readEnvironment } from '../../../../simulator/src/config/environment';

const noFile = (): string => {
  throw new Error('no such file');
};

test('the address of the broker may stand in a file, and one that is set beside it wins', () => {
  const file = { EBBLINE_MQTT_URL_FILE: '/run/secrets/broker' };
  const inFile = (path: string): string => (path === file.EBBLINE_MQTT_URL_FILE ? 'mqtt://a:b@hall:1883\n' : '');
  expect(readEnvironment(file, inFile)).toMatchObject({ value: { mqttUrl: 'mqtt://a:b@hall:1883' } });
  const both = { ...file, EBBLINE_MQTT_URL: 'mqtt://127.0.0.1:9' };
  expect(readEnvironment(both, noFile)).toMatchObject({ value: { mqttUrl: 'mqtt://127.0.0.1:9' } });
  const missing = readEnvironment(file, noFile);
  expect(missing.ok ? '' : missing.fault.map(({ message }) => message).join()).toContain('EBBLINE_MQTT_URL_FILE');
});

test('the environment has usual values for everything', () => {
  const read = readEnvironment({}, noFile);
  expect(read.ok && read.value).toEqual({ mqttUrl: 'mqtt://127.0.0.1:1883', speed: 1, seed: 1, scheduleFile: null });
});

test('all faults are told at once, by name and without the value', () => {
  const read = readEnvironment(
    {
      EBBLINE_MQTT_URL: 'secret',
      EBBLINE_SIMULATOR_SPEED: 'fast',
      EBBLINE_SIMULATOR_SEED: '1.5',
    },
    noFile,
  );
  const messages = read.ok ? [] : read.fault.map(({ message }) => message);
  expect(messages).toHaveLength(3);
  expect(messages.join()).toMatch(/EBBLINE_MQTT_URL.*EBBLINE_SIMULATOR_SPEED.*EBBLINE_SIMULATOR_SEED/);
  expect(messages.join()).not.toMatch(/secret|fast|1\.5/);
});
