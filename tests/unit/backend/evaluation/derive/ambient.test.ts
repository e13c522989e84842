import { describe, expect, it } from 'vitest';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { buildSite, runUnitM, type BuiltSite, type SiteOptions } from '../../../../helpers/compiled-site-builder';

const noSecondSensors = ['pump.inlet.pressure', 'supply.pressure', 'return.pressure'];
const derived = (options: SiteOptions, change: (built: BuiltSite) => void = () => undefined): BuiltSite => {
  const built = buildSite(options);
  runUnitM(built);
  change(built);
  deriveUnit(built.site, built.state, 0, 0, true);
  return built;
};

describe('ambient pressure', () => {
  it('is the standard atmosphere at the site altitude, marked as estimated, where the hall has no barometer', () => {
    const built = derived({ altitudeM: 500, without: [...noSecondSensors, 'ambient.pressure'] });
    // ISO 2533 at 500 m: 95 461 Pa; the supply low point is at 88.6 kPa when stopped.
    expect(Math.abs(built.value('vacuumMargin') - (95_461 - 88_630))).toBeLessThan(20);
    expect(built.reasons('vacuumMargin')).toBe(reasonBit.ambientEstimated);
    expect(built.expandedUncertainty('vacuumMargin')).toBeGreaterThan(2 * (3_000 / Math.sqrt(3)));
    expect(built.reasons('boilingMargin')).toBe(0);
  });

  it('falls back on the same estimate where the barometer is bad', () => {
    const built = derived({}, (one) => one.mark('ambient.pressure', reasonBit.stale));
    expect(built.reasons('vacuumMargin')).toBe(reasonBit.ambientEstimated);
    expect(built.value('vacuumMargin')).toBeGreaterThan(10_000);
    expect(built.state.sourceMs[built.slot('vacuumMargin')]).toBe(0);
  });

  it('makes the margin uncertain where the barometer is', () => {
    const built = derived({}, (one) => one.mark('ambient.pressure', reasonBit.stuck));
    expect(built.reasons('vacuumMargin')).toBe(reasonBit.inputUncertain);
  });

  it('hands the estimate on from a gauge pressure that was made absolute with it', () => {
    const built = derived({ gauge: ['separator.pressure'] }, (one) =>
      one.mark('separator.pressure', reasonBit.ambientEstimated),
    );
    expect(built.reasons('boilingMargin')).toBe(reasonBit.ambientEstimated);
    expect(built.reasons('drivingPressure')).toBe(reasonBit.ambientEstimated);
  });
});
