import { describe, expect, it } from 'vitest';
import { unitEntries } from '../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import type { UnitEntry } from '../../../../../backend/src/evaluation/alarm-rules/entry';
import { clearFinding, createFinding } from '../../../../../backend/src/evaluation/alarm-rules/finding';
import { Verdict } from '../../../../../backend/src/evaluation/alarm-rules/verdict';
import { createContext, fillContext } from '../../../../../backend/src/evaluation/pipeline/fill-context';
import type { ModeFound } from '../../../../../backend/src/evaluation/pipeline/mode-of-unit';
import { ChainBench } from './chain-bench';

/** A plant whose means are full, at rest: not its values are moved past a limit here, but the limit past its value. */
const bench = new ChainBench().run(700);
const finding = createFinding();

function verdictAt(entry: UnitEntry, limit: number, active: boolean): Verdict {
  const { index, modes } = bench.pipeline;
  const place = unitEntries.indexOf(entry);
  const context = createContext(bench.pipeline);
  fillContext(bench.pipeline, context, 0, modes[0] as ModeFound, bench.nowMs);
  context.part = entry.per === undefined ? -1 : 0;
  context.alarm = entry.per === undefined ? index.ofUnit(0) + place : index.parts.of(0, place);
  clearFinding(finding);
  entry.judge(context, { ...entry.defaults, low: Number.NaN, limit }, active, finding);
  return finding.verdict;
}

/** The limit at which the verdict turns, by halving; NaN where the rule does not judge this plant by its limit. */
function turnsAt(entry: UnitEntry, active: boolean): number {
  let [from, to] = [-1e12, 1e12];
  const first = verdictAt(entry, from, active);
  const last = verdictAt(entry, to, active);
  if (first === Verdict.hold || last === Verdict.hold || first === last) return Number.NaN;
  for (let i = 0; i < 200; i += 1) {
    const middle = (from + to) / 2;
    if (verdictAt(entry, middle, active) === first) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/** How often an alarm without delays is raised while the limit swings between two places. */
function raisedBySwings(entry: UnitEntry, there: number, back: number, swings: number): number {
  let active = false;
  let raised = 0;
  for (let i = 0; i < swings; i += 1)
    for (const limit of [there, back]) {
      const is: boolean = verdictAt(entry, limit, active) === Verdict.yes;
      if (is && !active) raised += 1;
      active = is;
    }
  return raised;
}

const withDeadband = unitEntries.filter(({ defaults }) => defaults.deadband > 0);

/** Their limits decide nothing of a plant at rest: only where a permit is open, a tank falls, or a day has been seen. */
const notAtRest = [...['AIR-4', 'PERMIT-1', 'TANK-1', 'PUMP-3', 'HX-1', 'INS-2', 'CHANGE-1', 'CHANGE-2']];

/** A share of the limit, where it is not in the unit of the limit: facility flow counts as back at 1.2 of it. */
const widthOf = ({ id, defaults: { deadband } }: UnitEntry): number =>
  id === 'FAC-1' ? 1 - 1 / (1 + deadband) : deadband;

describe('a value that swings about a limit', () => {
  const judged = withDeadband.filter(({ id }) => !notAtRest.includes(id));

  it('is tried at every entry that has a deadband and judges a plant at rest', () => {
    expect(withDeadband.filter((entry) => Number.isNaN(turnsAt(entry, false))).map(({ id }) => id)).toEqual(notAtRest);
    expect(judged.length).toBeGreaterThan(25);
  });

  it.each(judged.map((entry) => [entry.id, entry] as const))(
    'raises %s once while it comes back less than the deadband, and each time where it comes back further',
    (_, entry) => {
      const raisesAt = turnsAt(entry, false);
      const clearsAt = turnsAt(entry, true);
      const width = widthOf(entry);
      expect(Math.abs(clearsAt - raisesAt) / width).toBeCloseTo(1, 6);
      const back = Math.sign(clearsAt - raisesAt) * width;
      const beyond = raisesAt - 0.5 * back;
      expect(raisedBySwings(entry, beyond, raisesAt + 0.999 * back, 5)).toBe(1);
      expect(raisedBySwings(entry, beyond, raisesAt + 1.001 * back, 5)).toBe(5);
      expect(raisedBySwings(entry, raisesAt + 0.001 * back, raisesAt + 1.001 * back, 5)).toBe(0);
    },
  );
});
