import { beforeEach, describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { deriveHall } from '../../../../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { derivedPointIds } from '../../../../../backend/src/evaluation/derive/derived-point-ids';
import { loopPoints } from '../../../../../backend/src/evaluation/derive/tables/loop-points';
import { derivedPointsOfHall, derivedPointsOfUnit } from '../../../../../backend/src/evaluation/derive/derived-points';
import { pointDefinition } from '@ebbline/shared/contract/point-table';
import { badBits, reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import { buildSite, runUnitM, type BuiltSite, type SiteOptions } from '../../../../helpers/compiled-site-builder';

const derive = (built: BuiltSite, nowMs = 1_000, stopped = false): void => {
  deriveHall(built.site, built.state, 0, nowMs);
  deriveUnit(built.site, built.state, 0, nowMs, stopped);
};
const running = (options: SiteOptions = {}): BuiltSite => {
  const built = buildSite(options);
  runUnitM(built);
  return built;
};
/** Those that the hand-built site has every input of. */
const unitPoints = loopPoints.map(({ id }) => id.replace('node.<id>', 'node.floorSupply').replace('<id>', 'r1'));

describe('the derived table', () => {
  it('holds the ids that the site compiler gives slots to, in the same order', () => {
    expect(derivedPointsOfUnit.map(({ id }) => id)).toEqual(derivedPointIds.unit);
    expect(derivedPointsOfHall.map(({ id }) => id)).toEqual(derivedPointIds.hall);
  });

  it.each([...derivedPointsOfUnit, ...derivedPointsOfHall])(
    'gives $id the unit of measure of the contract',
    ({ id, unit }) => {
      expect(pointDefinition(id)).toMatchObject({ kind: 'derived', unit });
    },
  );
});

describe('quality of derived points', () => {
  let built: BuiltSite;
  beforeEach(() => {
    built = running();
  });

  it('is good for every point while all inputs are', () => {
    derive(built);
    for (const point of [...unitPoints, 'dewPoint']) {
      expect(built.reasons(point), point).toBe(0);
      expect(built.value(point), point).not.toBeNaN();
    }
  });

  it.each([
    [
      'loop.flow',
      [
        'node.floorSupply.pressure',
        'massFlow',
        'heatRemoved',
        'capture',
        'vacuumMargin',
        'vacuumMarginWorst',
        'boilingMargin',
        'lowerWallMargin',
      ],
    ],
    [
      'supply.temperature',
      [
        'node.floorSupply.pressure',
        'node.floorSupply.pressureStopped',
        'massFlow',
        'heatRemoved',
        'branch.r1.heatRemoved',
        'capture',
        'approach',
        'vacuumMargin',
        'vacuumMarginWorst',
        'boilingMargin',
        'lowerWallMargin',
        'drivingPressure',
        'dewPointMargin',
      ],
    ],
    [
      'return.temperature',
      [
        'heatRemoved',
        'capture',
        'vacuumMargin',
        'vacuumMarginWorst',
        'boilingMargin',
        'lowerWallMargin',
        'drivingPressure',
      ],
    ],
    [
      'supplyTank.pressure',
      [
        'node.floorSupply.pressure',
        'node.floorSupply.pressureStopped',
        'vacuumMargin',
        'vacuumMarginWorst',
        'boilingMargin',
        'lowerWallMargin',
        'drivingPressure',
      ],
    ],
    [
      'separator.pressure',
      ['vacuumMargin', 'vacuumMarginWorst', 'boilingMargin', 'lowerWallMargin', 'drivingPressure'],
    ],
    ['facility.supply.temperature', ['approach', 'dewPointMargin']],
    ['branch.r1.return.temperature', ['branch.r1.heatRemoved']],
    ['branch.r1.power', ['chipPower', 'capture']],
    ['vacuum.exhaustFlow', ['gasLoad']],
    ['hall.humidity', ['dewPoint', 'dewPointMargin']],
  ])('is bad, without a value, where %s is bad, and nowhere else', (input, struck) => {
    built.mark(input, reasonBit.stale);
    derive(built);
    for (const point of [...unitPoints, 'dewPoint']) {
      const bad = struck.includes(point);
      expect(Number.isNaN(built.value(point)), point).toBe(bad);
      expect(built.reasons(point), point).toBe(bad ? reasonBit.inputBad : 0);
      expect(Number.isNaN(built.expandedUncertainty(point)) || !bad, point).toBe(true);
    }
  });

  it('is uncertain, with a value, where an input is', () => {
    built.mark('loop.flow', reasonBit.jump);
    derive(built);
    expect(built.reasons('massFlow')).toBe(reasonBit.inputUncertain);
    expect(built.reasons('capture')).toBe(reasonBit.inputUncertain);
    expect(built.value('massFlow')).toBeGreaterThan(5);
    expect(built.reasons('approach')).toBe(0);
  });

  it('is never better than the worst of any set of marks (property)', () => {
    const inputs = ['loop.flow', 'supply.temperature', 'return.temperature', 'branch.r1.power', 'branch.r2.power'];
    const mark = fc.constantFrom(
      0,
      reasonBit.jump,
      reasonBit.stuck,
      reasonBit.stale,
      reasonBit.outOfRange,
      reasonBit.notReceived,
    );
    fc.assert(
      fc.property(fc.array(mark, { minLength: inputs.length, maxLength: inputs.length }), (marks) => {
        const one = running();
        inputs.forEach((input, i) => {
          one.mark(input, marks[i] ?? 0);
        });
        derive(one);
        const anyBad = marks.some((reasons) => (reasons & badBits) !== 0);
        expect(Number.isNaN(one.value('capture'))).toBe(anyBad);
        expect((one.reasons('capture') & badBits) !== 0).toBe(anyBad);
        if (!anyBad)
          expect(one.reasons('capture')).toBe(marks.some((reasons) => reasons !== 0) ? reasonBit.inputUncertain : 0);
      }),
    );
  });

  it('says not applicable where the site has no such sensor, rather than bad input', () => {
    const poor = running({
      without: [
        'facility.supply.temperature',
        'vacuum.exhaustFlow',
        'branch.r1.power',
        'pump.inlet.pressure',
        'supply.pressure',
        'return.pressure',
      ],
    });
    derive(poor);
    for (const point of ['approach', 'gasLoad', 'chipPower', 'capture']) {
      expect(poor.reasons(point), point).toBe(reasonBit.notApplicable);
      expect(poor.value(point), point).toBeNaN();
    }
    expect(poor.reasons('dewPointMargin')).toBe(0);
  });

  it('says out of range where the inputs are good but leave the equation behind', () => {
    built.set('return.temperature', 112);
    derive(built);
    expect(built.value('vacuumMargin')).toBeNaN();
    expect(built.reasons('vacuumMargin')).toBe(reasonBit.outOfRange);
  });

  it('is not touched by a bad flow while the loop is known to stand: its columns are static', () => {
    built.mark('loop.flow', reasonBit.stale);
    derive(built, 1_000, true);
    for (const point of ['vacuumMargin', 'vacuumMarginWorst', 'boilingMargin', 'lowerWallMargin'])
      expect(built.reasons(point), point).toBe(0);
  });

  it('has the age of the oldest input', () => {
    runUnitM(built, 50_000);
    built.set('loop.flow', 0.005, 47_000);
    built.set('branch.r2.power', 30_000, 20_000);
    derive(built, 51_000);
    const sourceMs = (point: string): number => built.state.sourceMs[built.slot(point)] ?? Number.NaN;
    expect(sourceMs('massFlow')).toBe(47_000);
    expect(sourceMs('chipPower')).toBe(20_000);
    expect(sourceMs('capture')).toBe(20_000);
    expect(sourceMs('approach')).toBe(50_000);
    expect(built.state.acceptedMs[built.slot('massFlow')]).toBe(51_000);
  });

  it('writes to no slot but those of derived points', () => {
    const { slots } = built.site;
    const measured = [...slots.pointId.keys()].filter((slot) => slots.measured[slot] === 1);
    const before = measured.map((slot) => built.state.value[slot]);
    derive(built);
    expect(measured.map((slot) => built.state.value[slot])).toEqual(before);
  });

  it('skips points that the site compiler left out', () => {
    const lean = running({
      without: ['capture', 'branch.r1.heatRemoved', 'pump.inlet.pressure', 'supply.pressure', 'return.pressure'],
    });
    derive(lean);
    expect(lean.value('heatRemoved')).toBeGreaterThan(0);
    expect(lean.value('branch.r2.heatRemoved')).toBeGreaterThan(0);
  });
});
