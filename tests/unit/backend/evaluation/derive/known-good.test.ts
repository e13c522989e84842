import { modes } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { deriveHall } from '../../../../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { buildSite, runUnitM, type BuiltSite } from '../../../../helpers/compiled-site-builder';
import { buildRichUnitM, richOptions, runRichUnitM } from '../../../../helpers/rich-unit-m';

const hour = 3_600_000;

/** Unit M whose exhaust goes up and down a little from mean to mean, from one hour to another. */
function watch(built: BuiltSite, fromH: number, toH: number, change: (nowMs: number) => void = () => undefined): void {
  for (let nowMs = fromH * hour; nowMs < toH * hour; nowMs += 10_000) {
    runRichUnitM(built, nowMs);
    built.set('vacuum.exhaustFlow', 5e-5 * (1 + 0.02 * (Math.floor(nowMs / 600_000) % 2)), nowMs);
    change(nowMs);
    deriveHall(built.site, built.state, 0, nowMs);
    deriveUnit(built.site, built.state, 0, nowMs, false);
  }
}
const unit = (knownGood: { fromMs: number; hours: number } | null): BuiltSite =>
  buildRichUnitM({ design: { ...richOptions().design, knownGood } });

describe('what is held against the known-good period', () => {
  it('is not set where the site file calls no period sound', () => {
    const built = unit(null);
    watch(built, 0, 0.1);
    for (const point of ['inLeakShift', 'patternDistance', 'patternResidual'])
      expect(built.reasons(point), point).toBe(reasonBit.notSet);
  });

  it('does not apply where the unit lacks the figure itself, as no period would help', () => {
    const built = buildSite();
    runUnitM(built);
    deriveUnit(built.site, built.state, 0, 0, false);
    expect(built.reasons('inLeak')).toBe(reasonBit.notApplicable);
    expect(built.reasons('inLeakShift')).toBe(reasonBit.notApplicable);
  });

  it('is warming until the hours of the period were watched, and a value from then on', () => {
    const built = unit({ fromMs: 0, hours: 4 });
    watch(built, 0, 3.9);
    expect(built.reasons('inLeakShift')).toBe(reasonBit.warming);
    watch(built, 3.9, 4.5);
    expect(built.reasons('inLeakShift')).toBe(0);
    expect(Math.abs(built.value('inLeakShift'))).toBeLessThan(1);
  });

  it('waits for the day from which the period is', () => {
    const built = unit({ fromMs: 6 * hour, hours: 4 });
    watch(built, 0, 8);
    expect(built.reasons('inLeakShift')).toBe(reasonBit.warming);
  });

  it('learns from a loop that runs only', () => {
    const built = unit({ fromMs: 0, hours: 4 });
    watch(built, 0, 6, (nowMs) => {
      built.set('mode', modes.indexOf('standby'), nowMs);
    });
    expect(built.reasons('inLeakShift')).toBe(reasonBit.warming);
  });

  it('finds a slow in-leak that no limit finds, with its sign', () => {
    const built = unit({ fromMs: 0, hours: 4 });
    watch(built, 0, 4.5);
    watch(built, 4.5, 12, (nowMs) => {
      built.set('vacuum.exhaustFlow', 5.3e-5, nowMs);
    });
    expect(built.value('inLeakShift')).toBeGreaterThan(1);
    expect(Math.abs(built.value('pumpEfficiencyShift') || 0)).toBeLessThan(1);
  });

  it('has no value where the figure is not known any more, and says why', () => {
    const built = unit({ fromMs: 0, hours: 4 });
    watch(built, 0, 4.5);
    watch(built, 4.5, 4.6, () => {
      built.mark('vacuum.exhaustFlow', reasonBit.stale);
    });
    expect(built.value('inLeakShift')).toBeNaN();
    expect(built.reasons('inLeakShift')).toBe(reasonBit.inputBad);
  });
});
