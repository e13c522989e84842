import { beforeEach, describe, expect, it } from 'vitest';
import { deriveHall } from '../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../backend/src/evaluation/derive/derive-unit';
import { path } from '../../backend/src/evaluation/derive/path';
import { buildSite, runUnitM, type BuiltSite } from '../helpers/compiled-site-builder';

/** Every number here is computed by hand from the parameter set of the demo plant's unit M; to within 1 %. No published source. */
const within = (share: number, value: number, expected: number): void => {
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThan(share);
};

const kPa = (built: BuiltSite, point: string): number => built.value(point) / 1000;
const derive = (built: BuiltSite, stopped: boolean): void => {
  deriveHall(built.site, built.state, 0, 0);
  deriveUnit(built.site, built.state, 0, 0, stopped);
};
const pressureAt = (built: BuiltSite, node: string, stopped: boolean): number =>
  (path(built.site, built.state, 0, stopped).find(({ id }) => id === node)?.pressurePa ?? Number.NaN) / 1000;

describe('unit M of the parameter set', () => {
  let unitM: BuiltSite;
  beforeEach(() => {
    unitM = buildSite();
    runUnitM(unitM);
  });

  it('has 88.6 kPa at the supply low point and a margin of 12.7 kPa when stopped', () => {
    derive(unitM, true);
    within(0.01, pressureAt(unitM, 'floorSupply', true), 88.6);
    within(0.01, kPa(unitM, 'vacuumMargin'), 12.7);
    within(0.01, kPa(unitM, 'vacuumMarginWorst'), 12.7);
    expect(unitM.where('vacuumMargin')).toBe('Floor supply main');
  });

  it('has a margin of 13.5 kPa when running, and the worst of running and stopped is still 12.7', () => {
    derive(unitM, false);
    within(0.01, kPa(unitM, 'vacuumMargin'), 13.5);
    within(0.01, kPa(unitM, 'vacuumMarginWorst'), 12.7);
  });

  it('knows its margin to 0.8 kPa (printed to one digit) from ± 0.4 and ± 0.1 kPa and ± 5 cm', () => {
    derive(unitM, false);
    expect(unitM.expandedUncertainty('vacuumMargin')).toBeGreaterThan(700);
    expect(unitM.expandedUncertainty('vacuumMargin')).toBeLessThan(850);
  });

  it('has 33 kPa at the return top when running and 24 when stopped (printed without decimals)', () => {
    expect(Math.round(pressureAt(unitM, 'manifoldTopReturn', false))).toBe(33);
    expect(Math.round(pressureAt(unitM, 'manifoldTopReturn', true))).toBe(24);
  });

  it('has a boiling margin of 33 − 9.6 kPa at the return top', () => {
    derive(unitM, false);
    within(0.01, kPa(unitM, 'boilingMargin'), 33.1 - 9.6);
    expect(unitM.where('boilingMargin')).toBe('Return manifold, top');
  });

  it('is bound from below by its pump inlet: NPSH available 2.5 m against 2.1', () => {
    derive(unitM, false);
    within(0.01, kPa(unitM, 'lowerWallMargin') / 9.71 + 2.1, 2.5);
    expect(unitM.where('lowerWallMargin')).toBe('pump inlet');
  });

  it('is driven by 40.1 kPa: 74 − 32 less 0.2 m of water', () => {
    derive(unitM, false);
    within(0.01, kPa(unitM, 'drivingPressure'), 40.1);
  });

  it('moves 208 kW with 346 L/min and 8.7 K', () => {
    derive(unitM, false);
    within(0.01, unitM.value('heatRemoved'), 208_000);
    within(0.01, unitM.value('massFlow'), 5.73);
  });
});
