import { describe, expect, it } from 'vitest';
import { alarmStates } from '@ebbline/shared/contract/alarm';
import { needsAcknowledgement, sayValueAgainstLimit } from '../../../../frontend/src/components/alarm-facts';
import { unitEntries } from '../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
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

  it.each(['AIR-1', 'PERMIT-1'])('says of the gas flow of %s that it is free air', (entry) => {
    const alarm = anAlarm('a', { entry, value: 0.001, limit: null, unit_of_measure: 'm3/s' });
    expect(sayValueAgainstLimit(alarm)).toBe('60.0\u00a0L/min free air');
  });

  it('says nothing of a yes or no', () => {
    expect(
      sayValueAgainstLimit(anAlarm('a', { entry: 'WATER-1', value: 1, limit: null, unit_of_measure: '1' })),
    ).toBeNull();
  });

  it('says of a share what it is a share of', () => {
    const alarm = { entry: 'FLOW-3', value: 0, limit: 0.8, unit_of_measure: '1' };
    expect(sayValueAgainstLimit(alarm)).toBe(
      '0\u00a0% of its share of the flow against a limit of 80\u00a0% of its share of the flow',
    );
  });

  it('says of a valve where it was told to stand', () => {
    const alarm = { entry: 'VALVE-1', value: 0.34, limit: 0.6, unit_of_measure: '1' };
    expect(sayValueAgainstLimit(alarm)).toBe('34\u00a0% open, told to stand at 60\u00a0% open');
  });

  it('has words for every entry of the catalogue that judges a plain number', () => {
    const numbers = unitEntries.filter(({ unitOfMeasure, defaults }) => unitOfMeasure === '1' && defaults.limit !== 1);
    expect(numbers.length).toBeGreaterThan(10);
    for (const { id, defaults } of numbers) {
      const said = sayValueAgainstLimit({ entry: id, value: 0.5, limit: defaults.limit, unit_of_measure: '1' });
      expect(said, id).toMatch(/\u00a0\D/);
    }
  });

  it('says of a count what is counted', () => {
    const alarm = { entry: 'AIR-3', value: 0.68, limit: 1, unit_of_measure: '1' };
    expect(sayValueAgainstLimit(alarm)).toBe('0.7\u00a0open hoses against a limit of 1.0\u00a0open hoses');
  });
});
