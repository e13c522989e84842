import { describe, expect, test } from 'vitest';
import { casesOfRow, singleFaults, type SingleFault } from '../fault-cases';
import { expectations } from '../expectations/all-expectations';
import type { LongExpectation } from './long-expectation';
import { longExpectations } from './long-expectations';
import { runOn } from './run-on';

/** All of them take an hour of two cores; else a handful, on one type each. */
const isLong = process.env['EBBLINE_TEST_LONG'] === '1';

const casesOf = (row: LongExpectation): SingleFault[] => casesOfRow({ first: [], ...row });
const looked = longExpectations.flatMap((row) => {
  const cases = casesOf(row);
  if (isLong) return cases.map((one) => [row, one] as const);
  return row.short === true ? cases.slice(0, 1).map((one) => [row, one] as const) : [];
});
const nameOf = ({ fault, size, way, type }: SingleFault): string =>
  [fault, size, way ?? '', type].join(' ').replace('  ', ' ');

describe('a fault that no alarm tells within five minutes', () => {
  test.for(looked.map(([row, one]) => [nameOf(one), row, one] as const))(
    'runs on until it is told: %s',
    ([, row, one]) => {
      const told = runOn(one, row.lastsS);
      const about = `${nameOf(one)}: ${row.because}; told ${JSON.stringify(told)}`;
      if (row.withinS !== undefined) expect(told?.afterS ?? Infinity, about).toBeLessThanOrEqual(row.withinS);
      if (told === null) return;
      expect(row.by, about).toContain(told.entry);
      expect(told.afterS, about).toBeGreaterThan(0);
    },
  );

  test('has a row that says when, by what, or why not, and no other fault has', () => {
    const quiet = new Set(expectations.filter(({ first }) => first.length === 0).flatMap(casesOfRow));
    const rowsOf = singleFaults.map(
      (one) => [nameOf(one), longExpectations.filter((row) => casesOf(row).includes(one)).length] as const,
    );
    const wanted = singleFaults.map((one) => [nameOf(one), quiet.has(one) ? 1 : 0] as const);
    expect(rowsOf).toEqual(wanted);
    expect(quiet.size).toBeGreaterThan(200);
  });
});
