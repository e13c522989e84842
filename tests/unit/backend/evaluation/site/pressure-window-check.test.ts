import { describe, expect, it } from 'vitest';
import {
  highestAltitude,
  noWindowMessage,
  windowAtAltitude,
  type WindowPlant,
} from '../../../../../backend/src/evaluation/site/pressure-window-check';
import { waterFluid } from '@ebbline/shared/fluid-properties/water-fluid';
import { smallSite } from '../../../../helpers/small-site';

/** A plant of 8 racks of 30 kW: heights and losses as in the small site. */
function plant(change: Partial<WindowPlant> = {}): WindowPlant {
  const unit = smallSite().units[0];
  if (unit === undefined) throw new Error('the small site has a unit');
  const { design, nodes } = unit;
  return { marginPa: 6500, returnC: 45, loopLossPa: 40_200, design, nodes, fluid: waterFluid, ...change };
}

describe('pressure window', () => {
  it('agrees with a sum by hand at sea level', () => {
    // By hand: density of water at 45 °C 990.2 kg/m³, p_v 9.595 kPa (IAPWS R7-97: 9.5950 kPa), g 9.80665 m/s².
    // Supply tank at most 101.325 − 6.5 − ρ g (1.0 + 0.5) = 80.26; separator 80.26 + ρ g (1.0 − 1.2) − 40.2 = 38.12 kPa.
    // Pump inlet: 9.595 + ρ g (2.1 − 0.45) + 2.4 = 28.02 kPa.
    const window = windowAtAltitude(plant(), 0);
    expect(window?.highestPa).toBeCloseTo(38_120, -1.5);
    expect(window?.lowestPa).toBeCloseTo(28_020, -1.5);
    expect(window?.lowestBecause).toBe('pump inlet');
    expect(noWindowMessage(plant(), 0)).toBeNull();
  });

  it('ends at the altitude where the air above has lost those 10.1 kPa', () => {
    // ISO 2533: 91.2 kPa stand at about 880 m.
    expect(highestAltitude(plant())).toBeGreaterThan(840);
    expect(highestAltitude(plant())).toBeLessThan(900);
    expect(noWindowMessage(plant(), 910)).toMatch(
      /no pressure window at 910 m.*pump inlet, return at 45\.0 °C.*up to about 8\d0 m/s,
    );
  });

  it('closes with a hotter return, a larger loss and a larger margin, and never opens by them', () => {
    const width = (change: Partial<WindowPlant>): number => {
      const window = windowAtAltitude(plant(change), 0);
      return window === null ? Number.NaN : window.highestPa - window.lowestPa;
    };
    const usual = width({});
    expect(width({ returnC: 55 })).toBeLessThan(usual);
    expect(width({ loopLossPa: 45_200 })).toBeCloseTo(usual - 5000, 3);
    expect(width({ marginPa: 8500 })).toBeCloseTo(usual - 2000, 3);
  });

  it('falls back on boiling at the top of the return where no pump inlet is judged', () => {
    const { design } = plant();
    const window = windowAtAltitude(plant({ design: { ...design, npshLimitM: null } }), 0);
    expect(window?.lowestBecause).toBe('boiling at the highest return');
    // 9.595 kPa and 0.8 m of water.
    expect(window?.lowestPa).toBeCloseTo(9595 + 990.2 * 9.80665 * 0.8, -1.5);
  });

  it('says nothing where heights are missing, and "at any altitude" where there is none at all', () => {
    const { design } = plant();
    expect(windowAtAltitude(plant({ design: { ...design, returnInletM: null } }), 0)).toBeNull();
    expect(noWindowMessage(plant({ loopLossPa: 90_000 }), 0)).toMatch(/none at any altitude/);
  });
});
