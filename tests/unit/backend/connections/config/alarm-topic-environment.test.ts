import { describe, expect, it } from 'vitest';
import { readAlarmTopic } from '../../../../../backend/src/connections/config/alarm-topic-environment';
import type { Fault } from '../../../../../backend/src/connections/config/read-variable';

const read = (text: string | undefined, ownBroker = false) => {
  const faults: Fault[] = [];
  return { topic: readAlarmTopic('EBBLINE_ALARM_TOPIC', text, ownBroker, faults), faults: faults.length };
};

describe('EBBLINE_ALARM_TOPIC', () => {
  it('is ebbline at the broker of our own and nothing at one of others, where it is not set', () => {
    expect(read(undefined, true)).toEqual({ topic: 'ebbline', faults: 0 });
    expect(read(undefined, false)).toEqual({ topic: null, faults: 0 });
  });

  it('is off where it says so', () => {
    expect(read('off', true)).toEqual({ topic: null, faults: 0 });
  });

  it('is one or more levels', () => {
    expect(read('plant/hall_2/ebbline.alarms')).toEqual({ topic: 'plant/hall_2/ebbline.alarms', faults: 0 });
  });

  // MQTT 3.1.1, section 4.7: wildcards are for filters, $ is the broker's own, and an empty level is one.
  it.each(['a/#', '+/b', '$SYS', '/a', 'a/', 'a//b', 'a b', 'ä', 'x'.repeat(201)])('may not be %s', (text) => {
    expect(read(text)).toEqual({ topic: null, faults: 1 });
  });
});
