import { describe, expect, it } from 'vitest';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { readingUncertainty } from '../../../../../backend/src/evaluation/derive/reading-uncertainty';
import { buildSite, runUnitM, type SiteOptions } from '../../../../helpers/compiled-site-builder';

/** U (k = 2, GUM 6.2.1) of a reading of the unit or hall after unit M has sent its values. */
function expandedOf(point: string, options: SiteOptions = {}): number {
  const built = buildSite(options);
  runUnitM(built);
  deriveUnit(built.site, built.state, 0, 0, false);
  return readingUncertainty(built.site, built.state, built.slot(point));
}
/** U of a rectangular band (GUM 4.3.7). */
const ofBand = (halfWidth: number): number => (2 * halfWidth) / Math.sqrt(3);

describe('expanded uncertainty of a measured reading', () => {
  it('is 2a/√3 of the stated half-width', () => {
    expect(expandedOf('supplyTank.pressure')).toBeCloseTo(ofBand(400), 9);
  });

  // IEC 60751 class A: ± (0.15 + 0.002 t) °C; unit M returns at 45 °C.
  it('adds the absolute and the relative half-width at the reading', () => {
    expect(expandedOf('return.temperature')).toBeCloseTo(ofBand(0.15 + 0.002 * 45), 9);
  });

  it('takes a relative half-width alone of the reading', () => {
    expect(expandedOf('loop.flow', { accuracy: { 'loop.flow': [Number.NaN, 0.01] } })).toBeCloseTo(
      ofBand((0.01 * 346) / 60_000),
      9,
    );
  });

  it('holds the barometer where a gauge reading is shown as absolute (GUM eq. 10)', () => {
    expect(expandedOf('supplyTank.pressure', { gauge: ['supplyTank.pressure'] })).toBeCloseTo(
      Math.hypot(ofBand(400), ofBand(100)),
      9,
    );
  });

  it('holds ± 3 kPa of weather where a gauge reading has no barometer', () => {
    const options = { gauge: ['supplyTank.pressure'], without: ['ambient.pressure', 'supply.pressure'] };
    expect(expandedOf('supplyTank.pressure', options)).toBeCloseTo(Math.hypot(ofBand(400), ofBand(3000)), 9);
  });

  it('is not stated where the site file states no accuracy', () => {
    expect(expandedOf('supplyTank.pressure', { accuracy: { 'supplyTank.pressure': [NaN, NaN] } })).toBeNaN();
  });

  it('is that of the equation for a derived point', () => {
    const built = buildSite();
    runUnitM(built);
    deriveUnit(built.site, built.state, 0, 0, false);
    const slot = built.slot('vacuumMargin');
    expect(readingUncertainty(built.site, built.state, slot)).toBe(built.expandedUncertainty('vacuumMargin'));
    expect(built.expandedUncertainty('vacuumMargin')).toBeGreaterThan(0);
  });
});
