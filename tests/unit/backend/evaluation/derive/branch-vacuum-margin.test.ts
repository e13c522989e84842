import { describe, expect, it } from 'vitest';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { buildSite, runUnitM, type BuiltSite } from '../../../../helpers/compiled-site-builder';

const derived = (change: (built: BuiltSite) => void): BuiltSite => {
  const built = buildSite({ also: ['branch.r1.return.pressure', 'branch.r1.isolated', 'branch.r2.isolated'] });
  runUnitM(built);
  built.set('branch.r1.isolated', 1);
  built.set('branch.r2.isolated', 0);
  change(built);
  deriveUnit(built.site, built.state, 0, 0, false);
  return built;
};
const margin = 'branch.r1.vacuumMargin';

describe('the vacuum margin of a branch by its own sensor', () => {
  it('goes below zero as the trapped water warms, while the margin of the loop stays as it is', () => {
    const cool = derived((one) => one.set('branch.r1.return.pressure', 40_000));
    const hot = derived((one) => one.set('branch.r1.return.pressure', 109_000));
    expect(cool.value(margin)).toBeCloseTo(101_300 - 40_000, 6);
    expect(hot.value(margin)).toBeCloseTo(-7_700, 6);
    expect(hot.value('vacuumMargin')).toBe(cool.value('vacuumMargin'));
    expect(hot.value('vacuumMargin')).toBeGreaterThan(0);
  });

  it('names its branch, and has an uncertainty', () => {
    const built = derived((one) => one.set('branch.r1.return.pressure', 40_000));
    expect(built.where(margin)).not.toBe('');
    expect(built.expandedUncertainty(margin)).toBeGreaterThan(0);
  });

  it('has no value, with the reason, where its sensor is silent', () => {
    const built = derived((one) => one.mark('branch.r1.return.pressure', reasonBit.stale));
    expect(built.value(margin)).toBeNaN();
    expect(built.reasons(margin) & reasonBit.inputBad).toBe(reasonBit.inputBad);
  });
});
