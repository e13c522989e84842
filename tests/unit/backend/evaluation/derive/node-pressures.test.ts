import { describe, expect, it } from 'vitest';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { buildSite, runUnitM, type BuiltSite, type SiteOptions } from '../../../../helpers/compiled-site-builder';
import { nodesOfUnitM } from '../../../../helpers/unit-m';

const derived = (
  options: SiteOptions = {},
  change: (built: BuiltSite) => void = () => undefined,
  stopped = false,
): BuiltSite => {
  const built = buildSite(options);
  runUnitM(built);
  change(built);
  deriveUnit(built.site, built.state, 0, 0, stopped);
  return built;
};
const kPa = (built: BuiltSite, point: string): number => built.value(point) / 1000;
const ids = nodesOfUnitM.map(({ id }) => id);
/** 9.80665 m/s² × 993.6 kg/m³ at 36.3 °C and × 990.2 at 45 °C (IAPWS SR6-08), kPa/m. */
const supplyPerM = 9.744;
const returnPerM = 9.711;

describe('the pressure at a wetted place', () => {
  it('is told for every place on both mains, running and stopped, with the place and with its uncertainty', () => {
    const built = derived();
    for (const id of ids)
      for (const point of [`node.${id}.pressure`, `node.${id}.pressureStopped`]) {
        expect(built.reasons(point), point).toBe(0);
        expect(built.value(point), point).toBeGreaterThan(0);
        expect(built.expandedUncertainty(point), point).toBeGreaterThan(0);
        expect(built.where(point)).toBe(nodesOfUnitM.find((node) => node.id === id)?.name);
      }
  });

  it('hangs on the water of its own leg: the same height weighs less where the water is hot', () => {
    const built = derived();
    const column = (main: string, top: string, low: string): number =>
      (built.value(`node.${low}${main}.pressureStopped`) - built.value(`node.${top}${main}.pressureStopped`)) / 2500;
    expect(column('Supply', 'manifoldTop', 'floor')).toBeCloseTo(supplyPerM, 3);
    expect(column('Return', 'manifoldTop', 'floor')).toBeCloseTo(returnPerM, 3);
    const cold = derived({}, (one) => one.set('return.temperature', 25));
    const rise = (one: BuiltSite): number =>
      one.value('node.floorReturn.pressureStopped') - one.value('node.manifoldTopReturn.pressureStopped');
    // 0.7 % from 25 to 45 °C (density 997.05 and 990.21 kg/m³, IAPWS SR6-08).
    expect(rise(cold) / rise(built)).toBeCloseTo(997.05 / 990.21, 4);
  });

  it('bounds the margins: the highest now, the worse of both, and the nearest to boiling are places told', () => {
    const built = derived();
    const now = ids.map((id) => kPa(built, `node.${id}.pressure`));
    const stopped = ids.map((id) => kPa(built, `node.${id}.pressureStopped`));
    expect(kPa(built, 'vacuumMargin')).toBeCloseTo(101.3 - Math.max(...now), 9);
    expect(kPa(built, 'vacuumMarginWorst')).toBeCloseTo(101.3 - Math.max(...now, ...stopped), 9);
    // Vapour pressure at 45 °C: 9.594 kPa (IAPWS R7-97 region 4); the lowest place stands on the hot main.
    expect(kPa(built, 'boilingMargin')).toBeCloseTo(Math.min(...now) - 9.594, 2);
  });

  it('loses its friction but not its column when the pump stops', () => {
    const running = derived();
    const stopped = derived({}, (one) => one.set('loop.flow', 0), true);
    for (const id of ids) {
      const was = running.value(`node.${id}.pressureStopped`);
      expect(stopped.value(`node.${id}.pressure`), id).toBeCloseTo(was, 6);
      expect(stopped.value(`node.${id}.pressureStopped`), id).toBeCloseTo(was, 6);
    }
    // With the loss goes what is not known of it.
    expect(stopped.expandedUncertainty('node.manifoldTopReturn.pressure')).toBeLessThan(
      running.expandedUncertainty('node.manifoldTopReturn.pressure'),
    );
  });

  it('is not known on the main whose sensor is bad, and stays known on the other', () => {
    const built = derived({}, (one) => one.mark('separator.pressure', reasonBit.stale));
    expect(built.reasons('node.floorReturn.pressure')).toBe(reasonBit.inputBad);
    expect(built.value('node.floorReturn.pressure')).toBeNaN();
    expect(built.reasons('node.floorSupply.pressure')).toBe(0);
    expect(built.reasons('vacuumMargin')).toBe(reasonBit.inputBad);
  });

  it('keeps its standing column where the flow is not known', () => {
    const built = derived({}, (one) => one.mark('loop.flow', reasonBit.stale));
    expect(built.reasons('node.floorSupply.pressure')).toBe(reasonBit.inputBad);
    expect(kPa(built, 'node.floorSupply.pressureStopped')).toBeCloseTo(74 + 1.5 * supplyPerM, 2);
  });

  it('stands on the reservoir in shape c once its pump stands, whatever the pump gave before', () => {
    const shapeC: SiteOptions = {
      shape: 'c',
      without: ['supplyTank.pressure', 'return.pressure', 'pump.inlet.pressure'],
    };
    const built = derived(shapeC, (one) => one.set('supply.pressure', 80_000));
    expect(kPa(built, 'node.floorSupply.pressureStopped')).toBeCloseTo(32 + 1.7 * supplyPerM, 2);
    expect(kPa(built, 'node.floorSupply.pressure')).toBeCloseTo(80 + 1.5 * supplyPerM - 0.8, 2);
    expect(kPa(built, 'vacuumMarginWorst')).toBeCloseTo(kPa(built, 'vacuumMargin'), 9);
  });
});

describe('pressures against the barometer', () => {
  /** The weather falls by 3 kPa; a gauge or vacuum transmitter of a controlled absolute pressure tells 3 kPa more or less. */
  const after = (gauge: readonly string[]): { before: BuiltSite; fallen: BuiltSite } => {
    const fall = (one: BuiltSite): void => {
      one.set('ambient.pressure', 98_300);
      // What quality makes of a reading against ambient: the absolute value in the slot moves with the barometer.
      for (const point of gauge) one.set(point, one.value(point) - 3_000);
    };
    return { before: derived({ gauge }), fallen: derived({ gauge }, fall) };
  };

  it('leave the margin less by the whole fall where the set points are absolute', () => {
    const { before, fallen } = after([]);
    expect(kPa(before, 'vacuumMargin') - kPa(fallen, 'vacuumMargin')).toBeCloseTo(3, 9);
    expect(kPa(fallen, 'node.floorSupply.pressure')).toBe(kPa(before, 'node.floorSupply.pressure'));
  });

  it('leave the margin as it is where they are held against ambient, and take from boiling and the pump inlet', () => {
    const { before, fallen } = after(['supplyTank.pressure', 'separator.pressure']);
    expect(kPa(fallen, 'vacuumMargin')).toBeCloseTo(kPa(before, 'vacuumMargin'), 9);
    expect(kPa(before, 'node.floorSupply.pressure') - kPa(fallen, 'node.floorSupply.pressure')).toBeCloseTo(3, 9);
    expect(kPa(before, 'boilingMargin') - kPa(fallen, 'boilingMargin')).toBeCloseTo(3, 9);
    // 3 kPa are 0.31 m of water.
    expect(before.value('npshAvailable') - fallen.value('npshAvailable')).toBeCloseTo(3 / returnPerM, 3);
  });

  it('carry the barometer’s error in an absolute pressure from a gauge, and against ambient in one from an absolute sensor', () => {
    const accuracy = { 'ambient.pressure': [2_000, Number.NaN] } as const;
    const low = 'node.floorSupply.pressure';
    const absolute = derived({ accuracy });
    const gauge = derived({ accuracy, gauge: ['supplyTank.pressure', 'separator.pressure'] });
    const barometer = 2 * (2_000 / Math.sqrt(3));
    expect(gauge.expandedUncertainty(low)).toBeCloseTo(Math.hypot(absolute.expandedUncertainty(low), barometer), 6);
    expect(absolute.expandedUncertainty('vacuumMargin')).toBeCloseTo(
      Math.hypot(gauge.expandedUncertainty('vacuumMargin'), barometer),
      6,
    );
  });
});

describe('a wetted place of one branch', () => {
  const nodes = [
    ...nodesOfUnitM,
    {
      id: 'rackTwo',
      name: 'Manifold of rack 2',
      main: 'supply',
      elevationM: -1,
      lossAtRatedFlowPa: 800,
      branch: 1,
      place: 4,
    },
    {
      id: 'rackTwoReturn',
      name: 'Return manifold of rack 2',
      main: 'return',
      elevationM: 2.2,
      lossAtRatedFlowPa: 8_900,
      branch: 1,
      place: 5,
    },
  ] as const;
  const options: SiteOptions = { nodes, also: ['branch.r1.isolated', 'branch.r2.isolated'] };
  const shut = (value: number) => (one: BuiltSite) => {
    one.set('branch.r1.isolated', 0);
    one.set('branch.r2.isolated', value);
  };

  it('counts in the margins while its branch is in the loop', () => {
    const built = derived(options, shut(0));
    expect(built.where('vacuumMargin')).toBe('Manifold of rack 2');
    expect(built.where('boilingMargin')).toBe('Return manifold of rack 2');
  });

  it('has no value and counts in no margin while its branch is isolated: no suction reaches it', () => {
    const built = derived(options, shut(1));
    for (const point of ['node.rackTwo.pressure', 'node.rackTwo.pressureStopped', 'node.rackTwoReturn.pressure']) {
      expect(built.reasons(point), point).toBe(reasonBit.notApplicable);
      expect(built.value(point), point).toBeNaN();
    }
    const without = derived();
    for (const point of ['vacuumMargin', 'vacuumMarginWorst', 'boilingMargin'])
      expect(built.value(point), point).toBe(without.value(point));
  });

  it('counts where the switch that tells of it is bad: what may be in the loop is watched', () => {
    const built = derived(options, (one) => {
      shut(1)(one);
      one.mark('branch.r2.isolated', reasonBit.stale);
    });
    expect(built.where('vacuumMargin')).toBe('Manifold of rack 2');
    expect(built.reasons('node.rackTwo.pressure')).toBe(0);
  });

  it('is judged for boiling by its branch’s own return, the hottest water there, else by the main’s', () => {
    const hot = derived(options, (one) => {
      shut(0)(one);
      one.set('branch.r2.return.temperature', 55);
    });
    const unknown = derived(options, (one) => {
      shut(0)(one);
      one.mark('branch.r2.return.temperature', reasonBit.stale);
    });
    const lowest = kPa(hot, 'node.rackTwoReturn.pressure');
    // 15.762 kPa at 55 °C, 9.594 kPa at 45 °C (IAPWS R7-97 region 4).
    expect(kPa(hot, 'boilingMargin')).toBeCloseTo(lowest - 15.762, 2);
    expect(kPa(unknown, 'boilingMargin')).toBeCloseTo(lowest - 9.594, 2);
  });
});
