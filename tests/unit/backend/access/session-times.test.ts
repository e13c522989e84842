import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { roles } from '@ebbline/shared/contract/people';
import { aheadToleranceMs } from '../../../../backend/src/access/made-ahead';
import { sessionEnds, sessionOver } from '../../../../backend/src/access/session-times';

const minuteMs = 60_000;
const hourMs = 60 * minuteMs;
const dayMs = 24 * hourMs;

describe('a session', () => {
  test.for([
    ['operator', 12 * hourMs - 1, 12 * hourMs - 1, null],
    ['operator', 12 * hourMs, 12 * hourMs, 'time'],
    ['operator', 0, hourMs - 1, null],
    ['operator', 0, hourMs, 'idle'],
    ['admin', 30 * minuteMs, 90 * minuteMs, 'idle'],
    ['engineer', 30 * minuteMs, 90 * minuteMs - 1, null],
    ['viewer', 0, 30 * dayMs - 1, null],
    ['viewer', 0, 30 * dayMs, 'time'],
  ] as const)('of a %s, acted in after %d ms, is after %d ms over because of: %s', ([role, acted, now, over]) => {
    expect(sessionOver(role, 0, acted, now)).toBe(over);
  });

  test('that came by an identity provider ends after 12 hours, a viewer’s too, and by idling as any other', () => {
    for (const role of roles) expect(sessionEnds(role, 0, 0, true).endsMs).toBe(12 * hourMs);
    expect(sessionOver('viewer', 0, 0, 12 * hourMs - 1, true)).toBeNull();
    expect(sessionOver('viewer', 0, 12 * hourMs, 12 * hourMs, true)).toBe('time');
    expect(sessionOver('operator', 0, 0, hourMs, true)).toBe('idle');
  });

  test.for([
    ['viewer', 5 * minuteMs, 5 * minuteMs, null],
    ['viewer', 5 * minuteMs + 1, 5 * minuteMs + 1, 'ahead'],
    ['viewer', 0, 5 * minuteMs + 1, 'ahead'],
    ['admin', 0, 5 * minuteMs, null],
    ['admin', 8 * dayMs, 8 * dayMs, 'ahead'],
  ] as const)(
    'of a %s, begun %d ms and acted in %d ms ahead of a clock that was set back, is over because of: %s',
    ([role, begun, acted, over]) => {
      expect(sessionOver(role, begun, acted, 0)).toBe(over);
    },
  );

  test('is over from its end on and never before, unless its times lie ahead of the clock', () => {
    const time = fc.integer({ min: 0, max: 40 * dayMs });
    fc.assert(
      fc.property(fc.constantFrom(...roles), time, time, time, (role, begun, after, now) => {
        const acted = begun + after;
        const { endsMs, idleEndsMs } = sessionEnds(role, begun, acted);
        const isAhead = acted > now + aheadToleranceMs;
        expect(sessionOver(role, begun, acted, now) === null).toBe(
          now < Math.min(endsMs, idleEndsMs ?? Infinity) && !isAhead,
        );
      }),
    );
  });

  test('of whoever is given more rights ends earlier, not later', () => {
    for (const role of ['operator', 'engineer', 'admin'] as const)
      expect(sessionEnds(role, 0, 0).endsMs).toBeLessThan(sessionEnds('viewer', 0, 0).endsMs);
  });
});
