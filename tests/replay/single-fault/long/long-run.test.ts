import { afterAll, describe, expect, test } from 'vitest';
import { casesOfRow, singleFaults, type SingleFault } from '../fault-cases';
import { expectations } from '../expectations/all-expectations';
import { isSilent, type LongExpectation } from './long-expectation';
import { longExpectations } from './long-expectations';
import { resultTable, type ResultRow } from './result-table';
import { runOn } from './run-on';

/** All of them take an hour of two cores; else a handful, on one type each. */
const isLong = process.env['EBBLINE_TEST_LONG'] === '1';

const casesOf = ({ fault, on, sizes, ways }: LongExpectation): SingleFault[] =>
  casesOfRow({ first: [], because: '', fault, ...(on && { on }), ...(sizes && { sizes }), ...(ways && { ways }) });
const looksForS = (row: LongExpectation): number => (isSilent(row) ? row.silentForS : row.withinS);
/** What is over soon comes first. */
const looked = [...longExpectations]
  .sort((one, other) => looksForS(one) - looksForS(other))
  .flatMap((row) => {
    const cases = casesOf(row);
    if (isLong) return cases.map((one) => [row, one] as const);
    return row.short === true ? cases.slice(0, 1).map((one) => [row, one] as const) : [];
  });
const nameOf = ({ fault, size, way, type }: SingleFault): string =>
  [fault, size, way, type].filter((part) => part !== null).join(' ');

describe('a fault that no alarm tells within five minutes', () => {
  const results: ResultRow[] = [];
  const came = new Map<LongExpectation, { firsts: string[]; beside: string[] }>();
  afterAll(() => {
    console.log(resultTable(results));
  });

  test.for(looked.map(([row, one]) => [nameOf(one), row, one] as const))(
    'is told by one that says what to do, or by none where it cannot be seen: %s',
    ([name, row, one]) => {
      const told = runOn(one, row);
      results.push({ fault: name, told });
      const about = `${name}: ${row.because}; told ${JSON.stringify(told)}`;
      if (isSilent(row)) {
        expect(told, about).toEqual([]);
        return;
      }
      const [first, ...rest] = told.filter(({ entry }) => !(row.before ?? []).some((alert) => alert === entry));
      expect(first?.entry, about).toBeOneOf([...row.by]);
      expect(first?.afterS, about).toBeGreaterThan(0);
      expect(first?.afterS, about).toBeLessThanOrEqual(row.withinS);
      for (const { entry } of rest) expect([...row.by, ...(row.beside ?? [])], about).toContain(entry);
      const { firsts, beside } = came.get(row) ?? { firsts: [], beside: [] };
      came.set(row, {
        firsts: [...firsts, first?.entry ?? ''],
        beside: [...beside, ...rest.map(({ entry }) => entry)],
      });
    },
  );

  const allThatIsListed = (): void => {
    for (const row of longExpectations) {
      if (isSilent(row)) continue;
      const { firsts = [], beside = [] } = came.get(row) ?? {};
      expect(new Set(firsts), row.because).toEqual(new Set(row.by));
      expect(new Set(beside), row.because).toEqual(new Set(row.beside ?? []));
    }
  };
  if (isLong) test('is expected by nothing that no longer tells it', allThatIsListed);

  test('has a row that says by when and by what, or why not, and no other fault has', () => {
    const quiet = new Set(expectations.filter(({ first }) => first.length === 0).flatMap(casesOfRow));
    const rowsOf = singleFaults.map(
      (one) => [nameOf(one), longExpectations.filter((row) => casesOf(row).includes(one)).length] as const,
    );
    const wanted = singleFaults.map((one) => [nameOf(one), quiet.has(one) ? 1 : 0] as const);
    expect(rowsOf).toEqual(wanted);
    expect(quiet.size).toBeGreaterThan(200);
  });
});
