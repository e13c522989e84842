import { describe, expect, it } from 'vitest';
import { deriveHall } from '../../../../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { buildSite, runUnitM, type BuiltSite, type SiteOptions } from '../../../../helpers/compiled-site-builder';

const none = [Number.NaN, Number.NaN] as const;
const derived = (options: SiteOptions = {}, stopped = false): BuiltSite => {
  const built = buildSite(options);
  runUnitM(built);
  deriveHall(built.site, built.state, 0, 0);
  deriveUnit(built.site, built.state, 0, 0, stopped);
  return built;
};
/** u of a rectangular band (GUM 4.3.7), in kPa where the half-width is. */
const u = (halfWidth: number): number => halfWidth / Math.sqrt(3);

describe('expanded uncertainty (k = 2) of derived points', () => {
  it('is 2 × 0.5 %/√3 of a mass flow whose meter is good to ± 0.5 %', () => {
    const built = derived();
    expect(built.expandedUncertainty('massFlow') / built.value('massFlow')).toBeCloseTo(2 * u(0.005), 10);
  });

  it('combines both class A sensors for an approach: ± (0.15 + 0.002 t) (IEC 60751)', () => {
    const built = derived();
    const expected = 2 * Math.hypot(u(0.15 + 0.002 * 36.3), u(0.15 + 0.002 * 30));
    expect(built.expandedUncertainty('approach')).toBeCloseTo(expected, 10);
  });

  it('is governed by the temperature pair for heat at 8.7 K, about 4 % (GUM eq. 10)', () => {
    const built = derived();
    const pair = Math.hypot(u(0.15 + 0.002 * 36.3), u(0.15 + 0.002 * 45)) / 8.7;
    const expected = 2 * Math.hypot(u(0.005), 0.001, pair);
    expect(built.expandedUncertainty('heatRemoved') / built.value('heatRemoved')).toBeCloseTo(expected, 8);
  });

  it('adds powers as independent meters, so the sum of two is surer than its parts', () => {
    const built = derived();
    expect(built.expandedUncertainty('chipPower') / built.value('chipPower')).toBeCloseTo(
      (2 * u(0.01)) / Math.SQRT2,
      10,
    );
  });

  it('adds heat and power as shares for a capture', () => {
    const built = derived();
    const share = (point: string): number => built.expandedUncertainty(point) / built.value(point);
    expect(share('capture')).toBeCloseTo(Math.hypot(share('heatRemoved'), share('chipPower')), 10);
  });

  it('holds tank sensor, barometer and elevation for the margin of a stopped loop', () => {
    const head = 993.6 * 9.80665 * u(0.05);
    expect(derived({}, true).expandedUncertainty('vacuumMargin')).toBeCloseTo(2 * Math.hypot(u(400), u(100), head), 0);
  });

  it('leaves the barometer out of a margin told by a gauge sensor, and takes it into a boiling margin told by one', () => {
    const absolute = derived({}, true);
    const gauge = derived({ gauge: ['supplyTank.pressure', 'separator.pressure'] }, true);
    const squares = (point: string): number =>
      (absolute.expandedUncertainty(point) / 2) ** 2 - (gauge.expandedUncertainty(point) / 2) ** 2;
    expect(squares('vacuumMargin')).toBeCloseTo(u(100) ** 2, 4);
    expect(squares('boilingMargin')).toBeCloseTo(-(u(100) ** 2), 4);
    expect(squares('drivingPressure')).toBeCloseTo(0, 4);
  });

  it('keeps the barometer in a driving pressure between one gauge and one absolute sensor', () => {
    const mixed = derived({ gauge: ['separator.pressure'] });
    const both = derived();
    expect(
      (mixed.expandedUncertainty('drivingPressure') / 2) ** 2 - (both.expandedUncertainty('drivingPressure') / 2) ** 2,
    ).toBeCloseTo(u(100) ** 2, 4);
  });

  it('grows with the losses that stand between anchor and node while water flows', () => {
    expect(derived({}, false).expandedUncertainty('boilingMargin')).toBeGreaterThan(
      derived({}, true).expandedUncertainty('boilingMargin'),
    );
  });

  it('is 0.31 K a per cent of humidity and 0.92 K a kelvin for a dew point near 25 °C and 50 % (own differentiation)', () => {
    const built = buildSite({ accuracy: { 'hall.humidity': [0.01, Number.NaN], 'hall.temperature': [0, Number.NaN] } });
    built.set('hall.temperature', 25);
    built.set('hall.humidity', 0.5);
    deriveHall(built.site, built.state, 0, 0);
    expect(built.expandedUncertainty('dewPoint') / 2).toBeCloseTo(u(0.31), 2);
    const other = buildSite({ accuracy: { 'hall.humidity': [0, Number.NaN], 'hall.temperature': [1, Number.NaN] } });
    other.set('hall.temperature', 25);
    other.set('hall.humidity', 0.5);
    deriveHall(other.site, other.state, 0, 0);
    expect(other.expandedUncertainty('dewPoint') / 2).toBeCloseTo(u(0.92), 2);
  });

  it.each([
    ['loop.flow', ['massFlow', 'heatRemoved', 'capture', 'vacuumMargin', 'boilingMargin', 'lowerWallMargin']],
    ['separator.pressure', ['drivingPressure', 'boilingMargin', 'lowerWallMargin']],
    ['supplyTank.pressure', ['drivingPressure', 'vacuumMargin']],
    ['ambient.pressure', ['vacuumMargin', 'vacuumMarginWorst']],
    ['vacuum.exhaustFlow', ['gasLoad']],
    ['hall.humidity', ['dewPoint', 'dewPointMargin']],
  ])('is not stated where %s states no accuracy; the value is', (input, points) => {
    const built = derived({ accuracy: { [input]: none } });
    for (const point of points) {
      expect(built.expandedUncertainty(point), point).toBeNaN();
      expect(built.value(point), point).not.toBeNaN();
    }
  });

  it('is stated for every point where every input states one', () => {
    const built = derived();
    for (const { id } of [
      { id: 'gasLoad' },
      { id: 'lowerWallMargin' },
      { id: 'dewPointMargin' },
      { id: 'branch.r1.heatRemoved' },
    ])
      expect(built.expandedUncertainty(id), id).toBeGreaterThan(0);
  });
});
