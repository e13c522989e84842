import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnsOf } from '../../../../../../backend/src/evaluation/pipeline/remembered/columns-of';
import { fromLearnt } from '../../../../../../backend/src/evaluation/pipeline/remembered/memory-image';
import { learntSoFar, recallMemory } from '../../../../../../backend/src/evaluation/pipeline/remembered/remember';
import { rememberedParts } from '../../../../../../backend/src/evaluation/pipeline/remembered/remembered-parts';
import {
  createPipelineState,
  type PipelineState,
} from '../../../../../../backend/src/evaluation/pipeline/pipeline-state';
import { RuleBench, type BenchOptions } from '../../alarm-rules/rule-bench';
import { Plant, plantSite } from '../plant';

/** A program that takes the place of this one so many seconds later, beside a plant in the state that `options` say. */
function restarted(before: RuleBench, options: BenchOptions, outageS = 60): RuleBench {
  const after = new RuleBench(options);
  after.nowMs = before.nowMs + outageS * 1000;
  const read = fromLearnt(learntSoFar(before.pipeline, before.nowMs));
  if (!read.ok) throw new Error(read.fault.message);
  recallMemory(after.pipeline, read.value, after.nowMs);
  return after;
}

const numbersOf = (state: PipelineState): Record<string, readonly number[]> =>
  Object.fromEntries(columnsOf(rememberedParts(state)).map(({ path, cells }) => [path, [...cells]]));

const fouled: BenchOptions = { also: ['valve.command'], values: { uaRatio: 0.7, 'valve.command': 0.5 } };

describe('what is remembered over a restart', () => {
  it('is all that was learnt, number by number', () => {
    const before = new RuleBench(fouled).hours(20);
    const after = restarted(before, fouled);
    expect(numbersOf(after.pipeline)).toEqual(numbersOf(before.pipeline));
    expect(numbersOf(after.pipeline)).not.toEqual(numbersOf(new RuleBench(fouled).pipeline));
  });

  it('lets the mean of a day go on, in place of twelve hours without one', () => {
    const before = new RuleBench(fouled).hours(11);
    expect(before.active('HX-1')).toBe(false);
    expect(restarted(before, fouled).hours(2).active('HX-1')).toBe(true);
    expect(new RuleBench(fouled).hours(2).active('HX-1')).toBe(false);
  });

  it('leaves out the hours of a long outage', () => {
    const before = new RuleBench(fouled).hours(20);
    const sound: BenchOptions = { ...fouled, values: { ...fouled.values, uaRatio: 1 } };
    const after = restarted(before, sound, 30 * 3600);
    expect(after.hours(11).active('HX-1')).toBe(false);
  });

  it('counts a week without a change-over through restarts', () => {
    const options: BenchOptions = { also: ['pump.standby.running'], values: { 'pump.standby.running': 0 } };
    const before = new RuleBench(options).hours(6 * 24);
    expect(restarted(before, options).hours(25).active('PUMP-2')).toBe(true);
  });

  it('tells a pump that tripped in a short outage, and takes one that stands after a long one for no trip', () => {
    const poor: BenchOptions = { without: ['chipPower', 'supply.pressure', 'return.pressure'], modeInferred: true };
    const stands: BenchOptions = { ...poor, values: { 'pump.running': 0 } };
    const before = new RuleBench(poor).run(60);
    expect(restarted(before, stands).run(10).active('PUMP-1')).toBe(true);
    expect(restarted(before, stands, 3600).run(60).active('PUMP-1')).toBe(false);
  });

  it('is nothing of a time that lies ahead, where the clock was set back', () => {
    const after = restarted(new RuleBench(fouled).hours(20), fouled, -3600);
    expect(numbersOf(after.pipeline)).toEqual(numbersOf(new RuleBench(fouled).pipeline));
  });

  it('goes to the unit of the same name, wherever it stands in another site file', () => {
    const before = new Plant(plantSite({ units: ['m1', 'm2'] })).run(700);
    const image = before.pipeline.learnt(before.nowMs);
    const site = plantSite({ units: ['m0', 'm2'] });
    const after = createPipelineState(site, 'wall');
    const was = createPipelineState(before.site, 'wall');
    const read = fromLearnt(image);
    if (!read.ok) throw new Error(read.fault.message);
    recallMemory(was, read.value, before.nowMs);
    recallMemory(after, read.value, before.nowMs);
    const heat = (state: PipelineState): readonly number[] => [...state.plant.runs.heatInWaterK];
    expect(heat(was)[1]).toBeCloseTo(8.7, 6);
    expect(heat(after)).toEqual([Number.NaN, heat(was)[1]]);
  });
});

describe('parts of a unit that were changed while the program stood', () => {
  const recalledBy = (branches: readonly string[], plates: BenchOptions['plates']): PipelineState => {
    const before = new RuleBench({ branches: ['r1', 'r2'], plates: [plate('a'), plate('b')] }).run(5);
    const { air, index, memory } = before.pipeline;
    air.namedBranch[0] = 1;
    air.namedScore[0] = 2;
    air.stepMs[0] = before.nowMs;
    memory.set(index.byName().get('m1:BOIL-1') ?? -1, 0, 3);
    return restarted(before, { branches, ...(plates === undefined ? {} : { plates }) }).pipeline;
  };
  const plate = (id: string) => ({ id, branch: 0, elevationM: null });
  const boiling = ({ index, memory }: PipelineState): number => memory.get(index.byName().get('m1:BOIL-1') ?? -1, 0);

  it('are not taken for the parts that stood in their place: the branch and the plate that were named are forgotten', () => {
    for (const changed of [
      recalledBy(['r2', 'r1'], [plate('a'), plate('b')]),
      recalledBy(['r1', 'r2'], [plate('b'), plate('a')]),
    ]) {
      expect([changed.air.namedBranch[0], changed.air.namedScore[0], boiling(changed)]).toEqual([-1, 0, Number.NaN]);
      expect(changed.air.stepMs[0]).not.toBeNaN();
    }
  });

  it('are known again where nothing was changed', () => {
    const same = recalledBy(['r1', 'r2'], [plate('a'), plate('b')]);
    expect([same.air.namedBranch[0], same.air.namedScore[0], boiling(same)]).toEqual([1, 2, 3]);
  });
});

describe('what is no memory', () => {
  const whole = learntSoFar(new RuleBench(fouled).hours(1).pipeline, 1_772_323_200_000);

  it('is refused whole, whatever the head is', () => {
    expect(fromLearnt(whole).ok).toBe(true);
    const change = fc.oneof(fc.jsonValue(), fc.constant({ ...(JSON.parse(whole.head) as object), form: 0 }));
    fc.assert(
      fc.property(change, (head) => {
        const read = fromLearnt({ ...whole, head: JSON.stringify(head) });
        expect(read).toMatchObject({ ok: false, fault: { code: 'MEMORY_MALFORMED' } });
      }),
    );
    expect(fromLearnt({ ...whole, head: '{' }).ok).toBe(false);
  });

  it('is refused where the numbers are not those of the head', () => {
    for (const numbers of [whole.numbers.subarray(1), new Float64Array(whole.numbers.length + 1)])
      expect(fromLearnt({ ...whole, numbers }).ok).toBe(false);
  });
});
