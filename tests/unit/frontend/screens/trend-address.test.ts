import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TrendView } from '../../../../frontend/src/screens/trends/trend-address';
import {
  longestSeconds,
  readAddress,
  shortestSeconds,
  usualSeconds,
  writeAddress,
} from '../../../../frontend/src/screens/trends/trend-address';

const id = fc.stringMatching(/^[A-Za-z][A-Za-z0-9_.-]{0,11}$/);
const followed = fc.record({
  kind: fc.constant('follow' as const),
  seconds: fc.integer({ min: shortestSeconds, max: longestSeconds }),
});
const fixed = fc
  .tuple(fc.integer({ min: 1e12, max: 2e12 }), fc.integer({ min: shortestSeconds, max: 1e7 }))
  .map(([fromMs, seconds]) => ({ kind: 'fixed' as const, fromMs, toMs: fromMs + seconds * 1000 }));
const views: fc.Arbitrary<TrendView> = fc.record({
  points: fc.uniqueArray(fc.record({ unit: id, point: id }), {
    maxLength: 24,
    selector: ({ unit, point }) => `${unit}:${point}`,
  }),
  period: fc.oneof(followed, fixed),
  envelope: fc.boolean(),
  limits: fc.boolean(),
  uncertainty: fc.boolean(),
  alarms: fc.boolean(),
  notes: fc.boolean(),
  earlierSeconds: fc.option(fc.integer({ min: shortestSeconds, max: longestSeconds }), { nil: null }),
  beside: fc.option(id, { nil: null }),
});

describe('the address of a trend', () => {
  it('shows again whatever was shown', () => {
    fc.assert(
      fc.property(views, (view) => {
        expect(readAddress(writeAddress(view))).toEqual(view);
      }),
    );
  });

  it('is read whatever stands in it', () => {
    fc.assert(
      fc.property(
        fc.dictionary(fc.constantFrom('points', 'from', 'to', 'last', 'limits', 'earlier', 'beside'), fc.string()),
        (query) => {
          const view = readAddress(query);
          const length =
            view.period.kind === 'follow' ? view.period.seconds : (view.period.toMs - view.period.fromMs) / 1000;
          expect(view.points.length).toBeLessThanOrEqual(24);
          expect(length).toBeGreaterThanOrEqual(shortestSeconds);
        },
      ),
    );
  });

  it('follows the last hour where it says nothing, and names a point once', () => {
    expect(readAddress({ points: 'e7:loop.flow,e7:loop.flow,broken' })).toEqual({
      points: [{ unit: 'e7', point: 'loop.flow' }],
      period: { kind: 'follow', seconds: usualSeconds },
      envelope: true,
      limits: true,
      uncertainty: false,
      alarms: true,
      notes: true,
      earlierSeconds: null,
      beside: null,
    });
  });
});
