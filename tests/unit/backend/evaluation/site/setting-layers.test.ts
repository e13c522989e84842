import { describe, expect, it } from 'vitest';
import {
  layersOfSite,
  limitsAt,
  withSettings,
  type SettingLayers,
} from '../../../../../backend/src/evaluation/site/setting-layers';
import { smallSite } from '../../../../helpers/small-site';

const none: SettingLayers = { site: new Map(), halls: new Map(), units: new Map() };
const margin = (limit: number) => new Map([['MARGIN-1', { limit }]]);
const limitOf = (changes: SettingLayers, unit: number): number | undefined =>
  withSettings(smallSite(), changes).units[unit]?.limits.get('MARGIN-1')?.limit;

describe('changes laid over the site file', () => {
  it('leave every unit as compiled where there are none', () => {
    const site = smallSite();
    expect(withSettings(site, none)).toBe(site);
    for (const { id, limits } of site.units)
      expect(limitsAt([layersOfSite(site)], new Map(), { hall: 'north', unit: id }).get('MARGIN-1')).toEqual(
        limits.get('MARGIN-1'),
      );
  });

  it('give way to what the file says nearer by, and win over what it says of the same place', () => {
    // The file: 5 kPa for the site, 6 kPa for m1, nothing for m2.
    expect([limitOf({ ...none, site: margin(7000) }, 0), limitOf({ ...none, site: margin(7000) }, 1)]).toEqual([
      6000, 7000,
    ]);
    const units = new Map([['m1', margin(8000)]]);
    expect([limitOf({ ...none, units }, 0), limitOf({ ...none, units }, 1)]).toEqual([8000, 5000]);
    const halls = new Map([['north', margin(9000)]]);
    expect([limitOf({ ...none, halls, units }, 0), limitOf({ ...none, halls, units }, 1)]).toEqual([8000, 9000]);
  });

  it('keep what the file says of other members, and the very unit that none of them reaches', () => {
    const site = smallSite();
    const laid = withSettings(site, { ...none, units: new Map([['m1', margin(8000)]]) });
    expect(laid.units[0]?.limits.get('MARGIN-1')).toEqual({ limit: 8000, deadband: 500, onDelayMs: 15_000 });
    expect(laid.units[1]).toBe(site.units[1]);
    expect(site.units[0]?.limits.get('MARGIN-1')?.limit).toBe(6000);
  });

  it('of places that the site has not reach nothing', () => {
    const laid = withSettings(smallSite(), { ...none, units: new Map([['m9', margin(1)]]) });
    expect(laid.units.map(({ limits }) => limits.get('MARGIN-1')?.limit)).toEqual([6000, 5000]);
  });
});
