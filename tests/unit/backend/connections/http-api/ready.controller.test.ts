import { describe, expect, it } from 'vitest';
import { ProblemError } from '../../../../../backend/src/connections/http-api/problem-error';
import { ReadyController } from '../../../../../backend/src/connections/http-api/ready.controller';
import type { BrokerState } from '../../../../../backend/src/ports/broker-link';

const controller = (state: BrokerState['state'], isJudging: boolean): ReadyController =>
  new ReadyController(
    { state: () => ({ state, address: '127.0.0.1:1883', embedded: true, note: null }) },
    {
      lastSampleAge: () => null,
      isJudging: () => isJudging,
      reasons: () => [{ code: 'JOURNAL_FAILING', message: '' }],
    },
  );

function refusal(state: BrokerState['state'], isJudging: boolean): unknown {
  try {
    return controller(state, isJudging).ready();
  } catch (fault) {
    if (!(fault instanceof ProblemError)) throw fault;
    const reasons = fault.members['reasons'] as { code: string }[];
    return [fault.code, ...reasons.map(({ code }) => code)];
  }
}

describe('the program', () => {
  it('is ready while it judges, also degraded and with its broker lost, which is known', () => {
    expect(refusal('connected', true)).toEqual({ status: 'ready' });
    expect(refusal('lost', true)).toEqual({ status: 'ready' });
  });

  it('is not ready before the first tick, nor once judging has ended, nor while the broker is awaited, and says so', () => {
    expect(refusal('connected', false)).toEqual(['NOT_READY', 'NOT_JUDGING']);
    expect(refusal('connecting', true)).toEqual(['NOT_READY', 'BROKER_AWAITED']);
    expect(refusal('connecting', false)).toEqual(['NOT_READY', 'BROKER_AWAITED', 'NOT_JUDGING']);
  });

  it('is alive as long as it answers', () => {
    expect(controller('connecting', false).alive()).toEqual({ status: 'alive' });
  });
});
