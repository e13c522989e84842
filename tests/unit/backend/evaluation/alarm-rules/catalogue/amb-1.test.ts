import { describe, expect, it } from 'vitest';
import { amb1 } from '../../../../../../backend/src/evaluation/alarm-rules/catalogue/amb-1';
import { createFinding } from '../../../../../../backend/src/evaluation/alarm-rules/finding';
import type { GroupContext } from '../../../../../../backend/src/evaluation/alarm-rules/group-context';
import { createPlantMemory } from '../../../../../../backend/src/evaluation/alarm-rules/plant-signs/plant-memory';
import { RuleMemory } from '../../../../../../backend/src/evaluation/alarm-rules/rule-memory';
import { createHallMeans, createUnitMeans } from '../../../../../../backend/src/evaluation/alarm-rules/slow-means';
import { Verdict } from '../../../../../../backend/src/evaluation/alarm-rules/verdict';
import type { CompiledHall } from '../../../../../../backend/src/evaluation/site/compiled-site';
import { createSlotState } from '../../../../../../backend/src/evaluation/slots/slot-state';
import { buildSite } from '../../../../../helpers/compiled-site-builder';

/** Halls whose barometers read so many kPa, at an altitude in m; null: the reading is bad. */
function halls(pressuresKPa: readonly (number | null)[], altitudeM = 0): GroupContext {
  const { site } = buildSite({ altitudeM });
  const state = createSlotState(pressuresKPa.length);
  pressuresKPa.forEach((pressure, slot) => {
    if (pressure === null) return;
    state.value[slot] = pressure * 1000;
    state.reasons[slot] = 0;
  });
  const hall = site.halls[0] as CompiledHall;
  const all = pressuresKPa.map((_, slot) => ({ ...hall, slot: { ...hall.slot, ambientPressure: slot } }));
  return {
    site: { ...site, halls: all },
    state,
    group: 0,
    units: [0],
    unitSlots: [],
    hallMeans: createHallMeans(all.length),
    unitMeans: createUnitMeans(1),
    nowMs: 0,
    memory: new RuleMemory(1),
    plant: createPlantMemory(1),
    alarm: 0,
  };
}

/** What is found of each hall, in order. */
function verdicts(pressuresKPa: readonly (number | null)[], altitudeM = 0, active = false): Verdict[] {
  const context = halls(pressuresKPa, altitudeM);
  return pressuresKPa.map((_, group) => {
    context.group = group;
    const finding = createFinding();
    amb1.judge(context, amb1.defaults, active, finding);
    return finding.verdict;
  });
}

const { yes, no, hold } = Verdict;

describe('AMB-1', () => {
  it('is raised for the one barometer that differs from the others by more than 0.3 kPa', () => {
    expect(verdicts([101.3, 101.35, 101.65, 101.28])).toEqual([no, no, yes, no]);
    expect(verdicts([101.3, 101.35, 101.55, 101.28])).toEqual([no, no, no, no]);
  });

  it('is not raised by a real deep low: 3 kPa in a day, in all halls alike, about which barometers agree', () => {
    // ISO 2533 at sea level is 101.325 kPa; a low of 96.5 kPa is measured weather.
    for (let hour = 0; hour <= 24; hour += 1) {
      const pressure = 99.5 - (3 * hour) / 24;
      expect(verdicts([pressure, pressure + 0.1, pressure - 0.05])).toEqual([no, no, no]);
      expect(verdicts([pressure])).toEqual([no]);
    }
  });

  it('is raised for a lone barometer 6 kPa from its altitude, by ISO 2533: 95.461 kPa at 500 m', () => {
    expect(verdicts([95.4], 500)).toEqual([no]);
    expect(verdicts([101.3], 500)).toEqual([no]);
    expect(verdicts([101.6], 500)).toEqual([yes]);
    expect(verdicts([89.3], 500)).toEqual([yes]);
  });

  it('says where it is not known which of two is off', () => {
    expect(verdicts([101.3, 101.8])).toEqual([yes, yes]);
    expect(amb1.detail?.(halls([101.3, 101.8]))).toMatch(/101\.30 kPa.*101\.80 kPa.*not known which/);
    expect(amb1.detail?.(halls([101.3, 101.8, 101.82]))).not.toMatch(/not known/);
  });

  it('holds where the barometer itself is bad, and leaves bad neighbours out', () => {
    expect(verdicts([null, 101.3], 0, true)[0]).toBe(hold);
    expect(verdicts([101.3, null, 101.31])).toEqual([no, hold, no]);
  });

  it('goes on standing while all neighbours are bad, as nothing says that it agrees again', () => {
    expect(verdicts([101.9, null, null], 0, true)[0]).toBe(hold);
    expect(verdicts([101.9], 0, true)[0]).toBe(no);
  });

  it('clears 50 Pa within its limit only', () => {
    expect(verdicts([101.58, 101.3, 101.3], 0, true)[0]).toBe(yes);
    expect(verdicts([101.55, 101.3, 101.3], 0, true)[0]).toBe(no);
  });
});
