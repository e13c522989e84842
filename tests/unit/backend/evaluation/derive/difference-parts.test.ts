import { describe, expect, it } from 'vitest';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { buildSite, runUnitM, type SiteOptions } from '../../../../helpers/compiled-site-builder';

const one = 'supply.temperature';
const other = 'facility.supply.temperature';

/** U (k = 2) of unit M's approach, with these standard uncertainties of its two thermometers, K. */
function ofApproach(a: number, b: number, options: SiteOptions = {}): number {
  const built = buildSite({ normal: { [one]: a, [other]: b }, ...options });
  runUnitM(built);
  deriveUnit(built.site, built.state, 0, 0, false);
  return built.expandedUncertainty('approach');
}

// JCGM 100:2008 (GUM), equations 10 and 16: u²(x − y) = u²(x) + u²(y) − 2 r u(x) u(y).
describe('the uncertainty of a difference of two thermometers', () => {
  it('is theirs in quadrature where no record says that they go together', () => {
    expect(ofApproach(0.03, 0.04)).toBeCloseTo(2 * 0.05, 12);
  });

  it.each([0.5, 0.8, 0.95])('is the less, the more a record says that they go together (r = %f)', (r) => {
    const expected = 2 * Math.sqrt(0.03 ** 2 + 0.04 ** 2 - 2 * r * 0.03 * 0.04);
    expect(ofApproach(0.03, 0.04, { matchedPairs: [[one, other, r]] })).toBeCloseTo(expected, 12);
  });

  it('is left as it is by a record of another pair', () => {
    const matchedPairs = [[one, 'return.temperature', 0.8]] as const;
    expect(ofApproach(0.03, 0.04, { matchedPairs })).toBeCloseTo(2 * 0.05, 12);
  });
});
