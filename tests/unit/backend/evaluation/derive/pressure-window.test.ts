import { describe, expect, it } from 'vitest';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { pressureWindow } from '../../../../../backend/src/evaluation/derive/pressure-window';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { buildSite, runUnitM, type BuiltSite, type SiteOptions } from '../../../../helpers/compiled-site-builder';

const hour = { lowestPa: 30_000, highestPa: 90_000 };
const derived = (options: SiteOptions = {}, change: (built: BuiltSite) => void = () => undefined): BuiltSite => {
  const built = buildSite(options);
  runUnitM(built);
  change(built);
  deriveUnit(built.site, built.state, 0, 0, false);
  return built;
};

describe('pressure window', () => {
  it('spans lowest to highest node between the wall that binds and ambient', () => {
    const built = derived();
    const window = pressureWindow(built.site, built.state, 0, 3_000, hour);
    expect(window).toMatchObject({
      lowestWhere: 'Return manifold, top',
      highestWhere: 'Floor supply main',
      ambientPa: 101_300,
      lowerWallKind: 'pumpInlet',
      lowerWallWhere: 'pump inlet',
      lowerWallGuardPa: 1_000,
      vacuumMarginGuardPa: 5_000,
      hourLowestPa: 30_000,
      hourHighestPa: 90_000,
    });
    expect(window.vacuumMargin).toMatchObject({
      value: built.value('vacuumMargin'),
      age: 3,
      quality: 'good',
      reasons: [],
    });
    expect((window.ambientPa ?? 0) - (window.highestPa ?? 0)).toBeCloseTo(built.value('vacuumMargin'), 6);
    expect((window.lowestPa ?? 0) - (window.lowerWallPa ?? 0)).toBeCloseTo(built.value('lowerWallMargin'), 6);
  });

  it('takes the guard of the vacuum margin from the site file where it sets the limit of MARGIN-1', () => {
    const built = derived({ limits: new Map([['MARGIN-1', { limit: 7_000 }]]) });
    expect(pressureWindow(built.site, built.state, 0, 0, hour).vacuumMarginGuardPa).toBe(7_000);
  });

  it('shows nothing in place of what it can not know', () => {
    const built = derived({}, (one) => one.mark('separator.pressure', reasonBit.stale));
    const window = pressureWindow(built.site, built.state, 0, 0, { lowestPa: null, highestPa: null });
    expect(window).toMatchObject({
      lowestPa: null,
      highestPa: null,
      lowerWallPa: null,
      lowerWallKind: null,
      lowerWallWhere: null,
      lowerWallGuardPa: null,
      hourLowestPa: null,
    });
    expect(window.lowerWallMargin).toMatchObject({
      value: null,
      quality: 'bad',
      reasons: ['inputBad'],
      expandedUncertainty: null,
    });
    expect(window.ambientPa).toBe(101_300);
  });

  it('is the same asked twice, and changes no slot', () => {
    const built = derived();
    const before = [...built.state.value];
    expect(pressureWindow(built.site, built.state, 0, 0, hour)).toEqual(
      pressureWindow(built.site, built.state, 0, 0, hour),
    );
    expect([...built.state.value]).toEqual(before);
  });
});
