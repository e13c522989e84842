import { describe, expect, it } from 'vitest';
import { coverageFactorOf, effectiveDegreesOfFreedom } from '@ebbline/shared/uncertainty/degrees-of-freedom';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { deriveHall } from '../../../../../backend/src/evaluation/derive/derive-hall';
import { explainPoint } from '../../../../../backend/src/evaluation/derive/explain-point';
import { deriveMemoryOf } from '../../../../../backend/src/evaluation/derive/memory/memory-of-state';
import { varianceOf } from '../../../../../backend/src/evaluation/derive/uncertainty-budget';
import type { BuiltSite } from '../../../../helpers/compiled-site-builder';
import { buildRichUnitM, runRichUnitM } from '../../../../helpers/rich-unit-m';

function running(): BuiltSite {
  const built = buildRichUnitM();
  for (let s = 1; s <= 90; s += 1) {
    runRichUnitM(built, s * 1000);
    built.set('separator.level', 0.6 + 1e-5 * s, s * 1000);
    deriveHall(built.site, built.state, 0, s * 1000);
    deriveUnit(built.site, built.state, 0, s * 1000, false);
  }
  return built;
}

const built = running();
const { site, state } = built;
const explain = (slot: number) => explainPoint(site, state, 0, slot, false);
const everySlot = site.holders.flatMap(({ slotOf }) => [...slotOf.values()]);
const derivedSlots = everySlot.filter((slot) => site.slots.measured[slot] !== 1);
const idOf = (slot: number): string => site.slots.pointId[slot] ?? '';

describe('an explanation', () => {
  it('leaves every value and everything remembered as it was', () => {
    const values = structuredClone(state);
    const remembered = (): unknown => structuredClone(Object.entries(deriveMemoryOf(site, state)));
    const memory = remembered();
    for (const slot of everySlot) explain(slot);
    expect(state).toEqual(values);
    expect(remembered()).toEqual(memory);
  });

  it.for(derivedSlots.map((slot) => [idOf(slot), slot] as const))('of %s comes to what stands there', ([, slot]) => {
    const { state: anew } = explain(slot);
    expect(anew.value[slot]).toBe(state.value[slot]);
    expect(anew.expandedUncertainty[slot]).toBe(state.expandedUncertainty[slot]);
    expect(anew.reasons[slot]).toBe(state.reasons[slot]);
    expect(anew.where[slot]).toBe(state.where[slot]);
  });

  it.for(derivedSlots.map((slot) => [idOf(slot), slot] as const))(
    'of %s has parts whose squares make its uncertainty, where one is stated',
    ([, slot]) => {
      const degrees = state.degreesOfFreedom[slot] ?? Number.NaN;
      const u = (state.expandedUncertainty[slot] ?? Number.NaN) / coverageFactorOf(degrees);
      if (Number.isNaN(u)) return;
      const { parts } = explain(slot);
      const ofParts = Math.sqrt(varianceOf(parts));
      expect(effectiveDegreesOfFreedom(u, parts)).toBe(degrees);
      expect(Math.abs(ofParts - u), `${ofParts} against ${u}`).toBeLessThanOrEqual(1e-9 * u);
    },
  );

  it('of a tank rate after some seconds rests on few observations, and has the larger factor of Student’s t', () => {
    const slot = built.slot('separatorRate');
    const degrees = state.degreesOfFreedom[slot] ?? Number.NaN;
    // The last 60 second differences, of which 18/35 are free.
    expect(degrees).toBe(30);
    expect(explain(slot).parts).toHaveLength(1);
    expect(coverageFactorOf(degrees)).toBeGreaterThan(2.05);
  });

  it('of a later second does not take that second’s samples', () => {
    const later = running();
    later.set('separator.level', 0.7, 91_000);
    const slot = later.slot('separatorRate');
    const before = later.value('separatorRate');
    expect(explainPoint(later.site, later.state, 0, slot, false).state.value[slot]).toBe(before);
  });

  it('of the dew point has both its parts, of which the squares make its uncertainty', () => {
    const slot = site.halls[0]?.slot.dewPoint ?? -1;
    const { parts, inputSlots } = explain(slot);
    expect(parts.map(({ from }) => from)).toEqual(['hall.temperature', 'hall.humidity']);
    expect(inputSlots.map(idOf)).toEqual(['hall.temperature', 'hall.humidity']);
    expect(2 * Math.sqrt(varianceOf(parts))).toBeCloseTo(state.expandedUncertainty[slot] ?? 0, 12);
  });

  it('of a reading is its own accuracy', () => {
    const { parts, formula, inputSlots } = explain(built.slot('loop.flow'));
    expect(parts).toEqual([
      { from: 'accuracy', contribution: (0.005 * 346) / 60_000 / Math.sqrt(3), degreesOfFreedom: Infinity },
    ]);
    expect(formula).toBeNull();
    expect(inputSlots).toEqual([]);
  });

  it('of a point that a unit can not have is its reason and nothing else', () => {
    const bare = buildRichUnitM({ without: ['facility.flow', 'supply.pressure', 'return.pressure'] });
    runRichUnitM(bare, 1000);
    deriveUnit(bare.site, bare.state, 0, 1000, false);
    const slot = bare.slot('facilityHeat');
    const explained = explainPoint(bare.site, bare.state, 0, slot, false);
    expect(explained.parts).toEqual([]);
    expect(explained.state.reasons[slot]).toBe(bare.reasons('facilityHeat'));
  });
});

describe('the inputs of a point', () => {
  const inputsOf = (id: string, from = built): readonly string[] =>
    explainPoint(from.site, from.state, 0, from.slot(id), false).inputSlots.map(
      (slot) => from.site.slots.pointId[slot] ?? '',
    );

  it('are those of its own part, or of every part where it has none', () => {
    expect(inputsOf('branch.r1.heatRemoved')).toEqual([
      'branch.r1.flow',
      'supply.temperature',
      'branch.r1.return.temperature',
    ]);
    expect(inputsOf('plate.p2.resistanceRatio')).toEqual(['plate.p2.resistance', 'branch.r2.flow']);
    expect(inputsOf('chipPower')).toEqual(['branch.r1.power', 'branch.r2.power']);
  });

  it('are the first choice that the unit has whole', () => {
    const other = buildRichUnitM({ without: ['supply.pressure', 'return.pressure', 'branch.r2.power'] });
    expect(inputsOf('chipPower', other)).toEqual(['plate.p1.power', 'plate.p2.power']);
  });
});
