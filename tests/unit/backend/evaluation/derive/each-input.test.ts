import { describe, expect, it } from 'vitest';
import { deriveHall } from '../../../../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../../../../backend/src/evaluation/derive/derive-unit';
import { explainPoint } from '../../../../../backend/src/evaluation/derive/explain-point';
import { badBits, reasonBit, reasonList } from '../../../../../backend/src/evaluation/slots/quality-reasons';
import type { BuiltSite } from '../../../../helpers/compiled-site-builder';
import { buildRichUnitM } from '../../../../helpers/rich-unit-m';
import { nextBest } from './next-best';

const first = buildRichUnitM();
const { site } = first;
const slots = first.site.holders.flatMap(({ slotOf }) => [...slotOf.values()]);
const isMeasured = (slot: number): boolean => site.slots.measured[slot] === 1;
const idOf = (slot: number): string => site.slots.pointId[slot] ?? '';
const usual = slots.filter(isMeasured).map((slot) => [slot, first.state.value[slot] ?? Number.NaN] as const);

/** One second of a unit in which all is well but for `change`. */
function step({ site: of, state, slot }: BuiltSite, s: number, change: () => void = () => undefined): void {
  for (const [at, value] of usual) {
    state.value[at] = value;
    state.sourceMs[at] = s * 1000;
    state.acceptedMs[at] = s * 1000;
    state.reasons[at] = 0;
  }
  state.value[slot('supplyTank.level')] = 0.5 - s * 1e-4;
  state.value[slot('separator.level')] = 0.6 + s * 1e-4;
  change();
  deriveHall(of, state, 0, s * 1000);
  deriveUnit(of, state, 0, s * 1000, false);
}

function watched(): BuiltSite {
  const built = buildRichUnitM();
  for (let s = 1; s <= 100; s += 1) step(built, s);
  return built;
}

const good = watched();
const valued = slots.filter((slot) => !isMeasured(slot) && ((good.state.reasons[slot] ?? 0) & badBits) === 0);

/** Measured points that a derived one rests on, over all the steps between. */
function measuredBehind(slot: number, seen = new Set<number>()): readonly number[] {
  for (const input of explainPoint(site, good.state, 0, slot, false).inputSlots) {
    if (seen.has(input)) continue;
    seen.add(input);
    if (!isMeasured(input)) measuredBehind(input, seen);
  }
  return [...seen].filter(isMeasured);
}
const behind = new Map(valued.map((slot) => [slot, measuredBehind(slot)]));
const inputs = [...new Set([...behind.values()].flat())].map((slot) => [idOf(slot), slot] as const);

/** What is wrong with the value of a slot: it is finite and has no bad reason, or it is none and has one. */
function unsound({ state }: BuiltSite, slot: number): readonly string[] {
  const value = state.value[slot] ?? 0;
  const u = state.expandedUncertainty[slot] ?? 0;
  const reasons = state.reasons[slot] ?? 0;
  const bad = (reasons & badBits) !== 0;
  const sound = bad ? Number.isNaN(value) && Number.isNaN(u) : Number.isFinite(value) && (Number.isNaN(u) || u >= 0);
  return sound && u !== Infinity ? [] : [`${idOf(slot)} = ${value} ± ${u} ${reasonList(reasons).join()}`];
}

describe('a derived value of a unit with every sensor', () => {
  it('rests on measured points that the unit has: enough of them that this test is one', () => {
    expect(inputs.length).toBeGreaterThanOrEqual(35);
    expect(valued.length).toBeGreaterThanOrEqual(80);
    for (const [slot, of] of behind)
      expect(of.length + (idOf(slot) === 'gasAllowance' ? 1 : 0), idOf(slot)).toBeGreaterThan(0);
  });

  it.for(inputs)(
    'is none, by a bad input, while %s is lost, or goes its next-best way; what does not rest on it stays',
    ([id, input]) => {
      for (const reason of ['notReceived', 'stale', 'senderFlag', 'outOfRange'] as const) {
        const built = watched();
        for (let s = 101; s <= 103; s += 1)
          step(built, s, () => {
            built.state.reasons[input] = reasonBit[reason];
            if (reason === 'notReceived') built.state.value[input] = Number.NaN;
          });
        const went = valued.filter((slot) => (built.state.reasons[slot] ?? 0) & badBits);
        for (const slot of went)
          expect(reasonList(built.state.reasons[slot] ?? 0), `${idOf(slot)}, ${id} ${reason}`).toContain('inputBad');
        for (const slot of went)
          expect((built.state.reasons[slot] ?? 0) & badBits, `${idOf(slot)}, ${id} ${reason}`).toBe(reasonBit.inputBad);
        for (const slot of went) expect(behind.get(slot), `${idOf(slot)} names ${id}`).toContain(input);
        expect(slots.filter((slot) => !isMeasured(slot)).flatMap((slot) => unsound(built, slot))).toEqual([]);
        const stayed = valued.filter((slot) => behind.get(slot)?.includes(input) === true && !went.includes(slot));
        expect(stayed.map(idOf).sort(), `${id} ${reason}`).toEqual([...(nextBest[id]?.points ?? [])].sort());
      }
    },
  );

  it('names a next-best way of no other points', () => {
    const ids = inputs.map(([id]) => id);
    expect(Object.keys(nextBest).filter((id) => !ids.includes(id))).toEqual([]);
  });

  it.for(inputs)(
    'is finite or none with a reason, its uncertainty too, whatever absurd number %s tells',
    ([id, input]) => {
      const built = watched();
      let s = 100;
      for (const absurd of [0, 1e-320, -1, 1e9, 1e15, -1e15, 1e308, -1e308, Number.MAX_VALUE, -Number.MAX_VALUE])
        for (let i = 0; i < 3; i += 1) {
          s += 1;
          step(built, s, () => {
            built.state.value[input] = absurd;
          });
          const wrong = slots.filter((slot) => !isMeasured(slot)).flatMap((slot) => unsound(built, slot));
          expect(wrong, `${id} ${absurd}`).toEqual([]);
        }
    },
  );

  it('is undefined where it is divided by a difference that is none: equal temperatures, pressures, no flow, no power', () => {
    const all = (from: RegExp, value: number): BuiltSite => {
      const built = watched();
      for (let s = 101; s <= 103; s += 1)
        step(built, s, () => {
          for (const [slot] of usual) if (from.test(idOf(slot))) built.state.value[slot] = value;
        });
      expect(slots.filter((slot) => !isMeasured(slot)).flatMap((slot) => unsound(built, slot))).toEqual([]);
      return built;
    };
    const undefinedIn = (built: BuiltSite): readonly string[] =>
      valued.filter((slot) => (built.state.reasons[slot] ?? 0) & reasonBit.undefined).map(idOf);
    const rest = ['lmtd', 'effectiveness', 'ntu', 'ua', 'uaRatio', 'heatBalance'];
    expect(undefinedIn(all(/temperature$/, 30))).toEqual(expect.arrayContaining([...rest, 'plate.p1.resistanceRatio']));
    expect(undefinedIn(all(/pressure$/, 60_000))).toEqual(expect.arrayContaining(['pumpEfficiency', 'flowShare']));
    expect(undefinedIn(all(/flow$/i, 0))).toEqual(expect.arrayContaining(['loopResistance', 'filterResistance']));
    expect(undefinedIn(all(/power$/, 0))).toEqual(expect.arrayContaining(['capture', 'plate.p1.resistance']));
  });
});
