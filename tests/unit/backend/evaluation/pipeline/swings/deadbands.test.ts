import { describe, expect, it } from 'vitest';
import { catalogue, unitEntries } from '../../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import { entryIds, type EntryId } from '../../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import type { Limits, UnitEntry } from '../../../../../../backend/src/evaluation/alarm-rules/entry';
import { clearFinding, createFinding } from '../../../../../../backend/src/evaluation/alarm-rules/finding';
import { rationaleTable } from '../../../../../../backend/src/evaluation/alarm-rules/rationale/rationale-table';
import { Verdict } from '../../../../../../backend/src/evaluation/alarm-rules/verdict';
import { createContext, fillContext } from '../../../../../../backend/src/evaluation/pipeline/fill-context';
import type { ModeFound } from '../../../../../../backend/src/evaluation/pipeline/mode-of-unit';
import { ChainBench } from '../chain-bench';
import { swingTable, type HowSwung } from './swing-table';

/** A plant whose means are full, at rest: not its values are moved past a limit here, but the limit past its value. */
const bench = new ChainBench().run(700);
const finding = createFinding();

function judgeAt(entry: UnitEntry, limits: Limits, active: boolean): Verdict {
  const { index, modes } = bench.pipeline;
  const place = unitEntries.indexOf(entry);
  const context = createContext(bench.pipeline);
  fillContext(bench.pipeline, context, 0, modes[0] as ModeFound, bench.nowMs);
  context.part = entry.per === undefined ? -1 : 0;
  context.alarm = entry.per === undefined ? index.ofUnit(0) + place : index.parts.of(0, place);
  clearFinding(finding);
  entry.judge(context, limits, active, finding);
  return finding.verdict;
}

const verdictAt = (entry: UnitEntry, limit: number, active: boolean): Verdict =>
  judgeAt(entry, { ...entry.defaults, low: Number.NaN, limit }, active);

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

const swung = (...how: readonly HowSwung[]): readonly EntryId[] =>
  entryIds.filter((id) => how.includes(swingTable[id]));
const unitEntriesSwung = (...how: readonly HowSwung[]): readonly UnitEntry[] =>
  unitEntries.filter(({ id }) => swung(...how).includes(id));

/** A share of the limit, where it is not in the unit of the limit: facility flow counts as back at 1.2 of it. */
const widthOf = ({ id, defaults: { deadband } }: UnitEntry): number =>
  id === 'FAC-1' ? 1 - 1 / (1 + deadband) : deadband;

describe('the table of swings', () => {
  it('has a row for every entry of the catalogue, and for no other', () => {
    expect(Object.keys(swingTable).sort()).toEqual([...entryIds].sort());
  });

  it('says of each entry that has a deadband how it is swung about, and of no other', () => {
    const withDeadband = entryIds.filter((id) => catalogue[id].defaults.deadband > 0);
    expect([...swung('atRest', 'driven')].sort()).toEqual([...withDeadband].sort());
  });

  it('lets a deadband be set of each entry that looks at one and whose limit can be set, and of no other', () => {
    const settable = entryIds.filter((id) => rationaleTable[id].setting.deadband);
    const looking = swung('atRest', 'driven', 'unset').filter((id) => rationaleTable[id].setting.limit !== null);
    expect([...looking].sort()).toEqual([...settable].sort());
  });

  it('moves the limit wherever that decides of a plant at rest', () => {
    const byLimit = unitEntriesSwung('atRest', 'driven').filter((entry) => !Number.isNaN(turnsAt(entry, false)));
    expect(byLimit.map(({ id }) => id).sort()).toEqual([...swung('atRest')].sort());
    expect(byLimit.length).toBeGreaterThan(25);
  });
});

describe('a limit that swings about a value', () => {
  it.each(unitEntriesSwung('atRest').map((entry) => [entry.id, entry] as const))(
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

/** How often a rule looks at its deadband, in alarm and not. */
function looksAtDeadband(id: EntryId): number {
  const entry = catalogue[id];
  let looks = 0;
  const limits: Limits = Object.defineProperty({ ...entry.defaults }, 'deadband', {
    get: () => {
      looks += 1;
      return 0;
    },
  });
  const ofUnit = unitEntries.find((one) => one.id === id);
  if (ofUnit !== undefined) for (const active of [false, true]) judgeAt(ofUnit, limits, active);
  return looks;
}

describe('an entry without a deadband', () => {
  it.each(swung('unset'))('%s has one where it is set', (id) => {
    expect(looksAtDeadband(id)).toBeGreaterThan(0);
    expect(rationaleTable[id].setting.deadband).toBe(true);
  });

  it.each(swung('none', 'drivenByOwn'))('%s looks at none, whatever is set', (id) => {
    expect(looksAtDeadband(id)).toBe(0);
    expect(rationaleTable[id].setting.deadband).toBe(false);
    const entry = catalogue[id];
    // Also where it judges what a plant at rest does not show.
    if ('judge' in entry) expect(String(entry.judge)).not.toContain('deadband');
    else expect(entry.defaults.limit).toBeNaN();
  });
});
