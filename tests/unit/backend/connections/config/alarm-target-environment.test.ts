import { describe, expect, it } from 'vitest';
import { readAlarmsPerDay } from '../../../../../backend/src/connections/config/alarm-target-environment';
import type { Fault } from '../../../../../backend/src/connections/config/read-variable';

const read = (text: string | undefined) => {
  const faults: Fault[] = [];
  return { ...readAlarmsPerDay('EBBLINE_ALARMS_PER_DAY', text, faults), faults };
};

describe('EBBLINE_ALARMS_PER_DAY', () => {
  it('takes the figures of another edition of the standard', () => {
    expect(read('144/288')).toEqual({ alarmsPerDay: { acceptable: 144, limit: 288 }, faults: [] });
  });

  it('changes nothing where it is not set', () => {
    expect(read(undefined)).toEqual({ faults: [] });
  });

  it('is refused by its name, and never printed, where it is no such pair', () => {
    const { faults } = read('300/150-secret');
    expect(faults).toMatchObject([{ variable: 'EBBLINE_ALARMS_PER_DAY' }]);
    expect(JSON.stringify(faults)).not.toContain('secret');
  });
});
