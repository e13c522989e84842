import type { VacuumSource } from '../../../../../backend/src/evaluation/site/compiled-site';
import { describe, expect, it } from 'vitest';
import { liquidWaterDensity } from '@ebbline/shared/fluid-properties/liquid-water';
import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { celsius } from '@ebbline/shared/units/quantity';
import { deriveHall } from '../../../../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { lowerWallGuardAt, lowerWallKindAt } from '../../../../../backend/src/evaluation/derive/nearest-lower-wall';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { buildSite, runUnitM, type BuiltSite, type SiteOptions } from '../../../../helpers/compiled-site-builder';

const noSecondSensors = ['pump.inlet.pressure', 'supply.pressure', 'return.pressure'];
const derived = (
  options: SiteOptions = {},
  change: (built: BuiltSite) => void = () => undefined,
  stopped = false,
): BuiltSite => {
  const built = buildSite(options);
  runUnitM(built);
  change(built);
  deriveHall(built.site, built.state, 0, 0);
  deriveUnit(built.site, built.state, 0, 0, stopped);
  return built;
};

describe('mass flow', () => {
  it.each([
    ['supply', 36.3],
    ['return', 45],
  ] as const)('takes the density at the %s where the meter sits', (side, t) => {
    const built = derived({ flowMeterSide: side });
    expect(built.value('massFlow')).toBeCloseTo((liquidWaterDensity(celsius(t)) * 346) / 60_000, 10);
  });
});

describe('heat of a branch', () => {
  it('goes with its own flow and return temperature, and names the branch', () => {
    const built = derived();
    expect(built.value('branch.r2.heatRemoved') / built.value('branch.r1.heatRemoved')).toBeCloseTo(7.7 / 8.7, 3);
    expect(built.where('branch.r2.heatRemoved')).toBe('Rack r2');
  });

  it('is not applicable to a branch without a flow meter', () => {
    const built = derived({ without: [...noSecondSensors, 'branch.r1.flow'] });
    expect(built.reasons('branch.r1.heatRemoved')).toBe(reasonBit.notApplicable);
    expect(built.reasons('branch.r2.heatRemoved')).toBe(0);
  });
});

describe('chip power', () => {
  const plates = [
    { id: 'p1', branch: 0, elevationM: 1 },
    { id: 'p2', branch: 1, elevationM: 1.5 },
  ];
  const platesAtWork = (built: BuiltSite): void => {
    built.set('plate.p1.power', 300);
    built.set('plate.p2.power', 250);
  };

  it('is the sum of the branches where every branch has a power, although some plates have one too', () => {
    expect(derived({ plates }, platesAtWork).value('chipPower')).toBe(60_000);
  });

  it('is the sum of the plates where not every branch has a power and every plate has', () => {
    expect(derived({ plates, without: [...noSecondSensors, 'branch.r2.power'] }, platesAtWork).value('chipPower')).toBe(
      550,
    );
  });

  it('is nothing where neither sum is complete', () => {
    const built = derived({ plates, without: [...noSecondSensors, 'branch.r2.power', 'plate.p1.power'] }, (one) =>
      one.set('plate.p2.power', 250),
    );
    expect(built.reasons('chipPower')).toBe(reasonBit.notApplicable);
  });
});

describe('capture', () => {
  it('is heat removed over chip power', () => {
    const built = derived();
    expect(built.value('capture')).toBeCloseTo(built.value('heatRemoved') / 60_000, 12);
  });

  it('says nothing while the chips draw less than a twentieth of rated heat', () => {
    const built = derived({}, (one) => {
      one.set('branch.r1.power', 6_000);
      one.set('branch.r2.power', 5_900);
    });
    expect(built.value('capture')).toBeNaN();
    expect(built.reasons('capture')).toBe(reasonBit.undefined);
    expect(built.value('chipPower')).toBe(11_900);
  });

  it('says nothing at no power at all where no rated heat is stated', () => {
    const built = derived({ design: { ratedHeatW: null } }, (one) => {
      one.set('branch.r1.power', 0);
      one.set('branch.r2.power', 0);
    });
    expect(built.value('capture')).toBeNaN();
  });
});

describe('pressures of the mains', () => {
  const nodes = buildSite().site.units[0]?.nodes ?? [];

  it('start at the supply sensor where the supply tank is not measured', () => {
    const built = derived(
      { without: ['pump.inlet.pressure', 'return.pressure', 'supplyTank.pressure'], design: { supplySensorM: 0 } },
      (one) => one.set('supply.pressure', 80_000),
      true,
    );
    const head = liquidWaterDensity(celsius(36.3)) * 9.80665 * 0.5;
    expect(built.value('vacuumMargin')).toBeCloseTo(101_300 - 80_000 - head, 6);
  });

  it('end at the return sensor where the separator is not measured', () => {
    const built = derived(
      { without: ['pump.inlet.pressure', 'supply.pressure', 'separator.pressure'], design: { returnSensorM: 1 } },
      (one) => one.set('return.pressure', 35_000),
      true,
    );
    const head = liquidWaterDensity(celsius(45)) * 9.80665 * (1 - 2);
    expect(built.value('boilingMargin')).toBeCloseTo(35_000 + head - saturationPressure(celsius(45)), 6);
    expect(built.where('lowerWallMargin')).toBe('Return manifold, top');
  });

  it('are not applicable where a main has no sensor with an elevation', () => {
    const built = derived({ design: { supplyTankSurfaceM: null, supplySensorM: null } });
    expect(built.reasons('vacuumMargin')).toBe(reasonBit.notApplicable);
    expect(built.reasons('drivingPressure')).toBe(reasonBit.notApplicable);
  });

  it('are not applicable where the site names no wetted node', () => {
    const built = derived({ nodes: [] });
    for (const point of ['vacuumMargin', 'vacuumMarginWorst', 'boilingMargin', 'lowerWallMargin']) {
      expect(built.reasons(point), point).toBe(reasonBit.notApplicable);
    }
  });

  it('take the nodes of one main alone where the site names no other', () => {
    const built = derived({ nodes: nodes.filter(({ main }) => main === 'supply') }, (one) =>
      one.mark('separator.pressure', reasonBit.stale),
    );
    expect(built.value('vacuumMargin')).toBeGreaterThan(0);
  });
});

describe('nearest lower wall', () => {
  const plate = { id: 'p1', branch: 0, elevationM: 2 };
  const withPlate: SiteOptions = { plates: [plate], design: { plateWallResistanceKPerW: 0.05 } };

  it('is boiling at a node where no NPSH limit is stated', () => {
    const built = derived({ design: { npshLimitM: null } });
    expect(built.value('lowerWallMargin')).toBe(built.value('boilingMargin'));
    expect(built.where('lowerWallMargin')).toBe('Return manifold, top');
  });

  it('is told by the pressure at the pump inlet itself where it is measured', () => {
    const built = derived({ without: ['supply.pressure', 'return.pressure'] }, (one) =>
      one.set('pump.inlet.pressure', 33_000),
    );
    const limit = 2.1 * liquidWaterDensity(celsius(45)) * 9.80665;
    expect(built.value('lowerWallMargin')).toBeCloseTo(33_000 - saturationPressure(celsius(45)) - limit, 6);
    expect(built.where('lowerWallMargin')).toBe('pump inlet');
  });

  it('is a hot plate wall where that binds: supply temperature + R × power, at the return pressure of its height', () => {
    const built = derived(withPlate, (one) => one.set('plate.p1.power', 600));
    const wallC = 36.3 + 0.05 * 600;
    const pressure = 32_000 + liquidWaterDensity(celsius(45)) * 9.80665 * (1.2 - 2) + 8_900;
    expect(built.where('lowerWallMargin')).toBe('Plate p1');
    expect(built.value('lowerWallMargin')).toBeCloseTo(pressure - saturationPressure(celsius(wallC)), 4);
    expect(built.expandedUncertainty('lowerWallMargin')).toBeGreaterThan(0);
  });

  it('leaves out a plate whose power is bad, and is uncertain for it', () => {
    const built = derived(withPlate, (one) => {
      one.set('plate.p1.power', 600);
      one.mark('plate.p1.power', reasonBit.stale);
    });
    expect(built.where('lowerWallMargin')).toBe('pump inlet');
    expect(built.reasons('lowerWallMargin')).toBe(reasonBit.inputUncertain);
  });

  const inletOnly = { without: ['supply.pressure', 'return.pressure'] };
  const inletAt = (marginPa: number): number =>
    saturationPressure(celsius(45)) + 2.1 * liquidWaterDensity(celsius(45)) * 9.80665 + marginPa;

  it('is the least margin in Pa while all walls stand beyond their guards', () => {
    const built = derived(inletOnly, (one) => one.set('pump.inlet.pressure', inletAt(4_900)));
    expect(4_900 / 1_000).toBeGreaterThan(built.value('boilingMargin') / 10_000);
    expect(built.where('lowerWallMargin')).toBe('pump inlet');
  });

  it('is a wall within its guard, though another that is sound stands nearer in Pa', () => {
    const built = derived(inletOnly, (one) => {
      one.set('pump.inlet.pressure', inletAt(4_900));
      one.set('separator.pressure', 18_000);
    });
    expect(built.value('boilingMargin')).toBeLessThan(10_000);
    expect(built.where('lowerWallMargin')).toBe('Return manifold, top');
    expect(built.value('lowerWallMargin')).toBe(built.value('boilingMargin'));
  });

  it('has a guard of its own for each kind of wall: 1 kPa at the pump, 10 kPa at node and plate', () => {
    const { site } = buildSite(withPlate);
    const places = site.holders[1]?.places ?? [];
    const kind = (name: string): string => lowerWallKindAt(site, 0, places.indexOf(name));
    expect([kind('pump inlet'), kind('Plate p1'), kind('Floor return main')]).toEqual([
      'pumpInlet',
      'plateWall',
      'node',
    ]);
    expect(lowerWallGuardAt(site, 0, places.indexOf('pump inlet'))).toBe(1_000);
    expect(lowerWallGuardAt(site, 0, places.indexOf('Plate p1'))).toBe(10_000);
  });
});

describe('gas load', () => {
  const source: VacuumSource = {
    count: 2,
    control: 'speed',
    sealWaterC: null,
    pressurePa: [4_000, 20_000, 40_000],
    suctionM3PerS: [0, 0.02, 0.022],
  };
  const curve: SiteOptions = { vacuumSource: source, without: [...noSecondSensors, 'vacuum.exhaustFlow'] };

  it('is the exhaust meter where there is one', () => {
    expect(derived({ vacuumSource: source }).value('gasLoad')).toBe(1 / 60_000);
  });

  it('is else speed × suction × the dry share of the pressure, as free air: Q = S (p − p_v)', () => {
    const built = derived(curve);
    const throughput = 0.2 * 0.0212 * (32_000 - saturationPressure(celsius(45)));
    expect(built.value('gasLoad')).toBeCloseTo((throughput / 101_325) * (293.15 / 318.15), 12);
    // A curve is taken as known to ± 5 %, of which k = 2 makes 2 × 5 %/√3.
    expect(built.expandedUncertainty('gasLoad') / built.value('gasLoad')).toBeCloseTo(0.1 / Math.sqrt(3), 6);
  });

  it('is none while the source does not run, whatever its speed says', () => {
    expect(derived(curve, (one) => one.set('vacuum.running', 0)).value('gasLoad')).toBe(0);
  });

  it('counts a running source without a speed at full', () => {
    const fixed = derived({ ...curve, without: [...noSecondSensors, 'vacuum.exhaustFlow', 'vacuum.speed'] });
    expect(fixed.value('gasLoad')).toBeCloseTo(5 * derived(curve).value('gasLoad'), 12);
  });

  it('is out of range where the separator leaves the curve: nothing is extrapolated', () => {
    const built = derived(curve, (one) => one.set('separator.pressure', 60_000));
    expect(built.reasons('gasLoad')).toBe(reasonBit.outOfRange);
  });
});

describe('dew point', () => {
  it('is held against the colder of loop supply and facility supply', () => {
    const built = derived({}, (one) => one.set('facility.supply.temperature', 14));
    expect(built.value('dewPointMargin')).toBeCloseTo(14 - built.value('dewPoint'), 12);
  });

  it('takes a humidity some per cent above 1 as saturated air, when it matters most, and no more than that', () => {
    expect(derived({}, (one) => one.set('hall.humidity', 1.02)).value('dewPoint')).toBeCloseTo(27, 10);
    expect(derived({}, (one) => one.set('hall.humidity', 1.06)).reasons('dewPoint')).toBe(reasonBit.outOfRange);
    expect(derived({}, (one) => one.set('hall.humidity', 0)).reasons('dewPoint')).toBe(reasonBit.outOfRange);
  });
});

describe('units and halls that are not there', () => {
  it('are a mistake of the caller, with a code', () => {
    const { site, state } = buildSite();
    expect(() => deriveUnit(site, state, 1, 0, false)).toThrow(/DERIVE_UNKNOWN_UNIT/);
    expect(() => deriveHall(site, state, 1, 0)).toThrow(/DERIVE_UNKNOWN_HALL/);
  });
});
