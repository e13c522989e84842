import { describe, expect, test } from 'vitest';
import { casesOfRow, singleFaults } from './fault-cases';
import type { Expectation } from './fault-expectation';
import { expectations } from './expectations/all-expectations';
import { judgeFault } from './judge-fault';

const nameOf = ({ fault, on, sizes, ways, first }: Expectation): string =>
  `${[fault, ...(ways ?? []), ...(sizes ?? []), on === undefined ? '' : `on ${on.join(', ')}`].filter(Boolean).join(' ')}: ${first.join(' or ') || 'nothing'}`;

const sorted = (entries: Iterable<string>): string[] => [...new Set(entries)].sort();

describe('a single fault tells the operator one alarm that matters, first', () => {
  test.for(expectations.map((row) => [nameOf(row), row] as const))('%s', ([, row]) => {
    const firsts: string[] = [];
    const beside: string[] = [];
    const again: string[] = [];
    const alerts: string[] = [];
    for (const one of casesOfRow(row)) {
      const judged = judgeFault(one);
      const about = `${JSON.stringify(one.command)}: ${row.because}; told ${JSON.stringify(judged.told)}`;
      const [first, ...rest] = judged.told;
      expect(judged.refused, about).toEqual({});
      expect(first === undefined ? [] : [first.entry], about).toEqual(
        row.first.length === 0 ? [] : [expect.toBeOneOf([...row.first])],
      );
      if (first !== undefined) {
        expect(first.afterS, about).toBeGreaterThan(0);
        expect(first.afterS, about).toBeLessThanOrEqual(row.withinS ?? 300);
        if (row.where !== undefined) expect(first.where, about).toBe(row.where);
        firsts.push(first.entry);
      }
      beside.push(...rest.map(({ entry }) => entry));
      again.push(...judged.again);
      alerts.push(...judged.alerts);
    }
    // Neither more than is listed, nor listed what no longer comes.
    expect(sorted(firsts), row.because).toEqual(sorted(row.first));
    expect(sorted(beside), `told beside it: ${row.because}`).toEqual(sorted(row.beside ?? []));
    expect(sorted(again), 'told again').toEqual(sorted(row.again ?? []));
    expect(sorted(alerts), 'alerts').toEqual(sorted(row.alerts ?? []));
  });

  test('of every fault, size, way and type of unit that the simulator has', () => {
    const rowsOf = singleFaults.map(
      (one) =>
        [JSON.stringify(one.command), expectations.filter((row) => casesOfRow(row).includes(one)).length] as const,
    );
    expect(rowsOf.filter(([, rows]) => rows !== 1)).toEqual([]);
    expect(singleFaults.length).toBeGreaterThan(400);
  });
});
