import { expect, test } from 'vitest';
import { readEnvironment } from '../../../../simulator/src/config/environment';

test('the environment has usual values for everything', () => {
  const read = readEnvironment({});
  expect(read.ok && read.value).toEqual({ mqttUrl: 'mqtt://127.0.0.1:1883', speed: 1, seed: 1, scheduleFile: null });
});

test('all faults are told at once, by name and without the value', () => {
  const read = readEnvironment({
    EBBLINE_MQTT_URL: 'secret',
    EBBLINE_SIMULATOR_SPEED: 'fast',
    EBBLINE_SIMULATOR_SEED: '1.5',
  });
  const messages = read.ok ? [] : read.fault.map(({ message }) => message);
  expect(messages).toHaveLength(3);
  expect(messages.join()).toMatch(/EBBLINE_MQTT_URL.*EBBLINE_SIMULATOR_SPEED.*EBBLINE_SIMULATOR_SEED/);
  expect(messages.join()).not.toMatch(/secret|fast|1\.5/);
});
