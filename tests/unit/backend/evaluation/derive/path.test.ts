import { describe, expect, it } from 'vitest';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { path } from '../../../../../backend/src/evaluation/derive/path';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { buildSite, runUnitM, type BuiltSite, type SiteOptions } from '../../../../helpers/compiled-site-builder';

const derived = (options: SiteOptions = {}, change: (built: BuiltSite) => void = () => undefined): BuiltSite => {
  const built = buildSite(options);
  runUnitM(built);
  change(built);
  deriveUnit(built.site, built.state, 0, 0, false);
  return built;
};

describe('path', () => {
  it('goes from supply tank over both mains to the separator', () => {
    const built = derived();
    const places = path(built.site, built.state, 0);
    expect(places.map(({ id }) => id)).toEqual([
      'supplyTank',
      'floorSupply',
      'manifoldTopSupply',
      'manifoldTopReturn',
      'floorReturn',
      'separator',
    ]);
    expect(places.map(({ outsideUnit }) => outsideUnit)).toEqual([false, true, true, true, true, false]);
    expect(places[0]).toMatchObject({ pressurePa: 74_000, elevation: 1, temperature: 36.3 });
    expect(places.at(-1)).toMatchObject({ pressurePa: 32_000, elevation: 0.6, temperature: 45 });
    for (const { pressurePa, vapourPressurePa } of places)
      expect(pressurePa ?? 0).toBeGreaterThan(vapourPressurePa ?? Infinity);
  });

  it('leaves open what a bad sensor hides', () => {
    const built = derived({}, (one) => one.mark('return.temperature', reasonBit.stale));
    const last = path(built.site, built.state, 0).at(-2);
    expect(last).toMatchObject({ pressurePa: null, vapourPressurePa: null, temperature: null, elevation: -0.5 });
  });
});
