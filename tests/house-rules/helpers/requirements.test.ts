import { describe, expect, test } from 'vitest';
import { notRunLines } from '../../helpers/not-run-reporter';
import { needsMark, requiredNames } from '../../helpers/probe-requirements';
import { requirements } from '../../helpers/requirements';

describe('requirements', () => {
  test('everything that EBBLINE_TEST_REQUIRE names is here', () => {
    const absent = requiredNames(process.env['EBBLINE_TEST_REQUIRE']).filter(
      (name) => requirements()[name].path === null,
    );
    expect(absent).toEqual([]);
  });

  test('a name that is not known is refused', () => {
    expect(() => requiredNames('mosquito')).toThrow(/known are mosquitto/);
    expect(requiredNames(' mosquitto , data ')).toEqual(['mosquitto', 'data']);
    expect(requiredNames(undefined)).toEqual([]);
  });

  test('what was not run is counted by what was absent, with the command that brings it', () => {
    const here = requirements();
    const titles = [`stores ${needsMark(['influxdb'])} > a`, `stores ${needsMark(['influxdb', 'mosquitto'])} > b`, 'c'];
    expect(notRunLines(titles, here)).toEqual([
      `  not run here: 1 test(s) that need mosquitto; to bring it: ${here.mosquitto.bring}`,
      `  not run here: 2 test(s) that need influxdb; to bring it: ${here.influxdb.bring}`,
      '  skipped without a requirement: 1 test(s), which is a defect',
    ]);
    expect(notRunLines([], here)).toEqual([]);
  });
});
