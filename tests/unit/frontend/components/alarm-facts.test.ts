import { describe, expect, it } from 'vitest';
import { alarmStates } from '@ebbline/shared/contract/alarm';
import { needsAcknowledgement, sayValueAgainstLimit } from '../../../../frontend/src/components/alarm-facts';
import { anAlarm } from '../../../screens/fixtures/builders';

describe('what an alarm says of itself', () => {
  it('asks for an answer in every state that is not acknowledged', () => {
    expect(alarmStates.filter(needsAcknowledgement)).toEqual([
      'unacknowledged',
      'returnedUnacknowledged',
      'latchedUnacknowledged',
    ]);
  });

  it('sets the value against its limit, each with its unit', () => {
    expect(sayValueAgainstLimit(anAlarm('a'))).toBe('4.1\u00a0kPa against a limit of 5.0\u00a0kPa');
  });

  it('says of a gas flow that it is free air', () => {
    const alarm = anAlarm('a', { entry: 'AIR-1', value: 0.001, limit: null, unit_of_measure: 'm3/s' });
    expect(sayValueAgainstLimit(alarm)).toBe('60.0\u00a0L/min free air');
  });

  it('says nothing of a yes or no', () => {
    expect(
      sayValueAgainstLimit(anAlarm('a', { entry: 'WATER-1', value: 1, limit: null, unit_of_measure: '1' })),
    ).toBeNull();
  });

  it('says of a count what is counted', () => {
    const alarm = { entry: 'AIR-3', value: 0.68, limit: 1, unit_of_measure: '1' };
    expect(sayValueAgainstLimit(alarm)).toBe('0.7\u00a0open hoses against a limit of 1.0\u00a0open hoses');
  });
});
