import { describe, expect, it } from 'vitest';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import type { BuiltSite, SiteOptions } from '../../../../helpers/compiled-site-builder';
import { buildRichUnitM, runRichUnitM } from '../../../../helpers/rich-unit-m';

function derived(
  change: SiteOptions,
  set: (built: BuiltSite, s: number) => void = () => undefined,
  seconds = 1,
  stopped = false,
): BuiltSite {
  const built = buildRichUnitM(change);
  for (let s = 1; s <= seconds; s += 1) {
    runRichUnitM(built, s * 1000);
    set(built, s);
    deriveUnit(built.site, built.state, 0, s * 1000, stopped);
  }
  return built;
}
const litres = (built: BuiltSite, point: string): number => built.value(point) * 60_000;

describe('shape c: a pump from a vacuum reservoir into the loop', () => {
  const shapeC: SiteOptions = {
    shape: 'c',
    without: ['return.pressure', 'supplyTank.pressure', 'supplyTank.level'],
  };
  const pumped = (built: BuiltSite): void => built.set('supply.pressure', 74_000);

  it('is driven by its pump: supply sensor less separator', () => {
    const built = derived(shapeC, pumped);
    expect(built.value('drivingPressure') / 1000).toBeCloseTo(40.05, 1);
    expect(built.value('flowShare')).toBeCloseTo(1, 2);
  });

  it('has no stored flow: it stands when its pump does', () => {
    expect(derived(shapeC, pumped).value('rideThroughFlow')).toBe(0);
  });

  it('has all its water in the reservoir', () => {
    const built = derived(shapeC, pumped, 20);
    expect(built.value('waterVolume')).toBeCloseTo(0.17 * 0.6, 6);
    expect(built.reasons('loopWaterRate')).toBe(0);
    expect(built.reasons('timeToEmpty')).toBe(reasonBit.notApplicable);
  });
});

describe('shape b: alternating tanks', () => {
  const shapeB: SiteOptions = {
    shape: 'b',
    without: ['supply.pressure', 'return.pressure', 'supplyTank.level', 'separator.level'],
    tanks: [
      { id: 't1', areaM2: 0.1 },
      { id: 't2', areaM2: 0.1 },
    ],
  };
  /** One tank gives what the other takes: 1 mm/s. */
  const swinging = (built: BuiltSite, s: number): void => {
    built.set('tank.t1.level', 0.5 - s * 0.001, s * 1000);
    built.set('tank.t2.level', 0.2 + s * 0.001, s * 1000);
  };

  it('counts the water of its tanks together, which their swing leaves as it is', () => {
    const built = derived(shapeB, swinging, 70);
    expect(built.value('waterVolume')).toBeCloseTo(0.07, 6);
    expect(Math.abs(litres(built, 'supplyTankRate'))).toBeLessThan(0.01);
    expect(built.value('loopWaterRate')).toBe(built.value('supplyTankRate'));
  });

  it('makes a gas load by working, which is no in-leak: a load step moves both alike', () => {
    const own = (flow: number): number => ((flow * 42) / 101.325) * (293.15 / 318.15);
    for (const flow of [100, 200]) {
      const built = derived(shapeB, (one, s) => {
        swinging(one, s);
        one.set('loop.flow', flow / 60_000, s * 1000);
        one.set('vacuum.exhaustFlow', (own(flow) + 2) / 60_000, s * 1000);
      });
      expect(litres(built, 'gasAllowance')).toBeCloseTo(own(flow) + 0.5, 6);
      expect(litres(built, 'inLeak')).toBeCloseTo(1.5, 6);
    }
  });
});

describe('an isolated branch', () => {
  const isolated = (built: BuiltSite): void => {
    built.set('branch.r2.isolated', 1);
    built.set('branch.r2.flow', 0);
  };

  it('has no share of the flow, and takes its own out of what is expected of the loop', () => {
    const open = derived({});
    const shut = derived({}, isolated);
    expect(shut.reasons('branch.r2.flowShare')).toBe(reasonBit.notApplicable);
    expect(shut.value('expectedFlow') / open.value('expectedFlow')).toBeCloseTo(0.5, 9);
    expect(shut.value('branch.r1.flowShare') / open.value('branch.r1.flowShare')).toBeCloseTo(303 / 346, 6);
  });

  it('is taken as open where the switch that tells of it is bad', () => {
    const built = derived({}, (one) => {
      isolated(one);
      one.mark('branch.r2.isolated', reasonBit.stale);
    });
    expect(built.value('branch.r2.flowShare')).toBe(0);
  });
});

describe('a stopped loop', () => {
  it('has NPSH without friction, and says nothing of a filter that no water passes', () => {
    const standing = (one: BuiltSite): void => {
      one.set('loop.flow', 0);
      one.set('transfer.flow', 0);
      one.set('pump.running', 0);
      one.set('filter.pressureDrop', 0);
    };
    const built = derived(
      { without: ['supply.pressure', 'return.pressure', 'pump.inlet.pressure'] },
      standing,
      1,
      true,
    );
    // (32 − 9.59) kPa ÷ 9.71 kPa/m + 0.45 m, by hand.
    expect(built.value('npshAvailable')).toBeCloseTo(2.76, 2);
    for (const point of ['filterResistance', 'loopResistance', 'rideThroughFlow', 'pumpEfficiency'])
      expect(built.reasons(point), point).toBe(reasonBit.undefined);
  });
});

describe('an open hose of the site', () => {
  it('lets air in at its inlet too where only a restrictor stands there, and not behind a check valve', () => {
    const carried = (fittings: SiteOptions['fittings']): number =>
      derived(fittings === undefined ? {} : { fittings }).value('openingsCarried');
    const usual = carried(undefined);
    const restricted = { restrictorBoreM: 0.0036, outletBoreM: 0.005, inletCheckValve: false };
    expect(carried({ ...restricted, inletCheckValve: true })).toBeCloseTo(usual, 9);
    // 83 free L/min at 64 kPa through the restrictor beside 163 through the outlet (parameter set, computed).
    expect(usual / carried(restricted)).toBeCloseTo(1 + 83 / 163, 1);
  });
});

describe('a quotient', () => {
  it('of both heats is undefined where the facility water hardly warms, while their gap is still judged', () => {
    const built = derived({}, (one) =>
      one.set('facility.return.temperature', one.value('facility.supply.temperature') + 0.05),
    );
    expect(built.reasons('heatBalance')).toBe(reasonBit.undefined);
    expect(built.value('heatBalance')).toBeNaN();
    expect(Math.abs(built.value('heatBalanceSignificance'))).toBeGreaterThan(3);
  });

  it('is undefined where the pump raises the pressure by less than its sensors know', () => {
    const built = derived({}, (one) => one.set('pump.discharge.pressure', one.value('pump.inlet.pressure') + 1));
    expect(built.reasons('pumpEfficiency')).toBe(reasonBit.undefined);
  });
});

describe('exchanger figures', () => {
  it('are not published while the two sides contradict each other by more than two standard uncertainties', () => {
    const built = derived({}, (one) => one.set('facility.flow', 9 / 995));
    expect(Math.abs(built.value('heatBalanceSignificance'))).toBeGreaterThan(2);
    for (const point of ['effectiveness', 'ntu', 'ua', 'uaRatio'])
      expect(built.reasons(point), point).toBe(reasonBit.contradicted);
    expect(built.reasons('lmtd')).toBe(0);
  });

  it('say nothing where an end of the exchanger is closer than its thermometers know', () => {
    const built = derived({}, (one) => one.set('facility.supply.temperature', 36.2));
    expect(built.reasons('lmtd')).toBe(reasonBit.undefined);
    for (const point of ['effectiveness', 'ntu', 'ua']) expect(built.reasons(point), point).toBe(reasonBit.undefined);
  });

  it('hand the reason on to what is worked out from them, and give no number', () => {
    const built = derived({}, (one) => one.set('facility.supply.temperature', 36.2));
    expect(built.reasons('uaRatio')).toBe(reasonBit.undefined);
    for (const point of ['lmtd', 'effectiveness', 'ntu', 'ua', 'uaRatio']) expect(built.value(point), point).toBeNaN();
  });

  it('are undefined where the facility flow would come from a rise that its thermometers can not tell from nothing', () => {
    const built = derived({ without: ['supply.pressure', 'return.pressure', 'facility.flow'] }, (one) =>
      one.set('facility.return.temperature', one.value('facility.supply.temperature') + 0.05),
    );
    for (const point of ['effectiveness', 'ntu']) expect(built.reasons(point), point).toBe(reasonBit.undefined);
  });

  it('take the facility flow from the balance where it is not metered', () => {
    const built = derived({ without: ['supply.pressure', 'return.pressure', 'facility.flow'] });
    expect(built.reasons('ua')).toBe(0);
    expect(built.value('ua') / derived({}).value('ua')).toBeCloseTo(1, 2);
    expect(built.reasons('uaRatio')).toBe(reasonBit.notApplicable);
  });
});
