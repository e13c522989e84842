import { alarmStates } from '@ebbline/shared/contract/alarm';
import { describe, expect, it } from 'vitest';
import { stateFacts } from '../../backend/src/evaluation/alarm-lifecycle/states';
import { transition } from '../../backend/src/evaluation/alarm-lifecycle/transition';
import { expectedTransitions } from './expected-transitions';

describe('every state and event, against the table of ISA-18.2 and IEC 62682', () => {
  it('has a case for each of six states, six events, plain and latching', () => {
    const cases = new Set(expectedTransitions.map(({ from, event, latching }) => `${from} ${event} ${latching}`));
    expect(cases.size).toBe(alarmStates.length * 6 * 2);
  });

  for (const { from, event, latching, to, refusal } of expectedTransitions) {
    const alarm = latching ? 'a latching alarm' : 'a plain alarm';
    it(`${alarm} that is ${from}, on ${event}, ${refusal === null ? `becomes ${to ?? 'nothing new'}` : `answers ${refusal}`}`, () => {
      const step = transition(from, event, latching);
      if (refusal !== null) {
        expect(step).toEqual({ ok: false, refusal });
        return;
      }
      if (!step.ok) throw new Error(`refused with ${step.refusal}`);
      expect(step.state).toBe(to ?? from);
      expect(step.changed).toBe(to !== null);
      expect(step.effects.includes('record')).toBe(to !== null);
      expect(step.effects.includes('annunciate')).toBe(to === 'unacknowledged');
    });
  }
});

describe('what the states say', () => {
  it('never lets an acknowledgement change whether the condition holds', () => {
    for (const from of alarmStates) {
      for (const latching of [false, true]) {
        const step = transition(from, 'acknowledge', latching);
        if (step.ok) expect(stateFacts[step.state].active).toBe(stateFacts[from].active);
      }
    }
  });

  it('takes every standing state but normal to the list', () => {
    expect(alarmStates.filter((state) => !stateFacts[state].standing)).toEqual(['normal']);
  });
});
