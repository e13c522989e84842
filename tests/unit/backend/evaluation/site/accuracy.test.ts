import { describe, expect, it } from 'vitest';
import { uncertaintyOfReading } from '../../../../../backend/src/evaluation/derive/standard-uncertainty';
import { compiledOrThrow, slotOf } from '../../../../helpers/small-site';
import { changed } from './change-document';

/** Standard uncertainty of a reading of a point of unit m1 whose accuracy is stated so. */
function u(point: string, accuracy: string | readonly string[], reading: number): number {
  const site = compiledOrThrow(changed([['units', 'm1', 'points', point, 'accuracy'], accuracy]));
  return uncertaintyOfReading(site.slots, slotOf(site, 'm1', point), reading);
}
const root3 = Math.sqrt(3);

describe('a stated accuracy', () => {
  it('as a band counts as rectangular: a/√3', () => {
    expect(u('supply.temperature', '±0.3 K', 40)).toBeCloseTo(0.3 / root3, 12);
  });

  it('as a share of the reading or of the span counts as rectangular', () => {
    expect(u('loop.flow', '2 % of reading', 0.005)).toBeCloseTo((0.02 * 0.005) / root3, 12);
    expect(u('supply.temperature', '0.5 % of span', 40)).toBeCloseTo((0.005 * 90) / root3, 12);
  });

  // IEC 60751:2008, tolerance classes.
  it.for([
    ['Pt100 AA', 0.1765],
    ['Pt100 A', 0.24],
    ['Pt100 B', 0.525],
    ['Pt100 C', 1.05],
  ] as const)('of %s at 45 °C is a band of ± %f K', ([stated, band]) => {
    expect(u('supply.temperature', stated, 45)).toBeCloseTo(band / root3, 9);
  });

  // GUM 7.2.3: U = k u.
  it('of a certificate is its U over its k, normal', () => {
    expect(u('supply.temperature', 'U = 0.1 K (k = 2)', 40)).toBeCloseTo(0.05, 12);
    expect(u('supply.temperature', 'U=0.1 K (k=2.5)', 40)).toBeCloseTo(0.04, 12);
    expect(u('loop.flow', 'U = 1 % of reading (k = 2)', 0.005)).toBeCloseTo(0.005 * 0.005, 12);
  });

  it('in a list: bands add up, certificates as squares', () => {
    expect(u('supply.temperature', ['±0.1 K', '±0.2 K'], 40)).toBeCloseTo(0.3 / root3, 12);
    expect(u('supply.temperature', ['U = 0.06 K (k = 2)', 'U = 0.08 K (k = 2)'], 40)).toBeCloseTo(0.05, 12);
    expect(u('supply.temperature', ['U = 0.1 K (k = 2)', '±0.3 K'], 40)).toBeCloseTo(Math.hypot(0.05, 0.3 / root3), 12);
  });

  // EN 1434-1, class 2: ±(2 + 0.02 q_p/q) %.
  it('of a heat meter of class 2 grows toward small flows', () => {
    const percent = (q: number): number => (100 * u('loop.flow', 'EN 1434 class 2 of 20 m3/h', q) * root3) / q;
    const permanent = 20 / 3600;
    expect(percent(permanent)).toBeCloseTo(2.02, 9);
    expect(percent(permanent / 10)).toBeCloseTo(2.2, 9);
  });
});

describe('a matched pair', () => {
  const pairs = (...more: readonly object[]) =>
    compiledOrThrow(
      changed([['templates', 'typeM', 'matchedPairs'], more.map((one) => ({ by: 'lab', on: '2026-03-14', ...one }))]),
    ).units[0]?.matchedPairs;

  it('is kept by its slots with its correlation', () => {
    const site = compiledOrThrow(changed());
    expect(pairs({ points: ['supply.temperature', 'return.temperature'], correlation: 0.8 })).toEqual([
      {
        slot: slotOf(site, 'm1', 'supply.temperature'),
        mate: slotOf(site, 'm1', 'return.temperature'),
        correlation: 0.8,
      },
    ]);
  });
});
