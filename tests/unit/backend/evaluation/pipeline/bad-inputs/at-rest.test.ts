import { describe, expect, it } from 'vitest';
import { unitEntries } from '../../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import type { UnitEntry } from '../../../../../../backend/src/evaluation/alarm-rules/entry';
import { clearFinding, createFinding } from '../../../../../../backend/src/evaluation/alarm-rules/finding';
import { Verdict } from '../../../../../../backend/src/evaluation/alarm-rules/verdict';
import { createContext, fillContext } from '../../../../../../backend/src/evaluation/pipeline/fill-context';
import { modeOfUnit } from '../../../../../../backend/src/evaluation/pipeline/mode-of-unit';
import { ChainBench } from '../chain-bench';
import { raisedForReal } from './raised-for-real';

const finding = createFinding();

/** What the rule says of an alarm that stands, with its limit moved to where every value is beyond it; its text is asked for too. */
function judgeStanding({ nowMs, pipeline }: ChainBench, entry: UnitEntry, limit: number): Verdict {
  const { index, state } = pipeline;
  const place = unitEntries.indexOf(entry);
  const context = createContext(pipeline);
  fillContext(pipeline, context, 0, modeOfUnit(state, context.slots), nowMs);
  context.part = entry.per === undefined ? -1 : 0;
  context.alarm = entry.per === undefined ? index.ofUnit(0) + place : index.parts.of(0, place);
  clearFinding(finding);
  entry.judge(context, { ...entry.defaults, low: Number.NaN, limit }, true, finding);
  const { verdict } = finding;
  entry.detail?.(context);
  return verdict;
}

/** Beyond which every value is, high or low; null where the limit decides nothing of a plant at rest. */
function farLimit(bench: ChainBench, entry: UnitEntry): number | null {
  const [low, high] = [-1e12, 1e12].map((limit) => judgeStanding(bench, entry, limit) === Verdict.yes);
  return low === high ? null : low === true ? -1e12 : 1e12;
}

/** Chemistry by hand alone: they end by what a person types (water tests). */
const byHand = ['CHEM-6', 'CHEM-7'];

describe('the whole chain, one measured point lost after the other', () => {
  it('lets no rule say that an alarm beyond its limit is over, and no text of it throw', () => {
    const bench = new ChainBench().run(700);
    const standing = unitEntries.flatMap((entry) => {
      const limit = farLimit(bench, entry);
      return limit === null ? [] : [[entry, limit] as const];
    });
    // What a limit does not bring into alarm is raised for real, beside this file.
    const others = unitEntries.filter((entry) => !standing.some(([one]) => one === entry)).map(({ id }) => id);
    expect(others.filter((id) => !byHand.includes(id)).sort()).toEqual(Object.keys(raisedForReal).sort());

    const ended: string[] = [];
    for (const point of new Set(bench.measured)) {
      bench.badPoint(point).run(12);
      for (const [entry, limit] of standing)
        if (judgeStanding(bench, entry, limit) === Verdict.no) ended.push(`${entry.id} by ${point}`);
      bench.good().run(12);
    }
    expect(ended).toEqual([]);
  }, 120_000);
});
