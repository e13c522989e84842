import { describe, expect, it } from 'vitest';
import { allTables } from './all-tables';
import { derivedPoints, equationOf, toleranceOf } from './evaluate-row';

/** Derived points whose equation is a bare sum, product or share of what is read: nothing is published to hold against them. */
const definitionOnly = [
  'chipPower',
  'supplyTankRate',
  'separatorRate',
  'waterVolume',
  'loopWaterVolume',
  'loopWaterRate',
  'topUpRate',
  'waterBalance',
  'waterBalanceSignificance',
  'timeToEmpty',
  'timeToFull',
  'branch.<id>.flowShare',
  'heatRemovedUncertainty',
  'facilityHeatUncertainty',
  'chipPowerUncertainty',
];

const agrees = (value: number, expected: number, tolerance: number): boolean => Math.abs(value - expected) <= tolerance;

describe.each(allTables)('$title', (table) => {
  const equation = equationOf(table);

  it.each(table.rows)('$id ($status: $source)', (row) => {
    const value = table.evaluate(equation, row.inputs);
    const tolerance = toleranceOf(row);
    expect(agrees(value, row.expected, tolerance), `${value} is not ${row.expected} ± ${tolerance}`).toBe(true);
  });

  it.each(table.rows)('$id fails where its expected value is shifted by three tolerances', (row) => {
    const value = table.evaluate(equation, row.inputs);
    const tolerance = toleranceOf(row);
    expect(tolerance).toBeGreaterThan(0);
    expect(agrees(value, row.expected + 3 * tolerance, tolerance)).toBe(false);
    expect(agrees(value, row.expected - 3 * tolerance, tolerance)).toBe(false);
  });
});

const onSite = allTables.flatMap((table) => (table.onSite === undefined ? [] : [{ ...table, onSite: table.onSite }]));

describe.each(onSite)('$onSite.point of a site: $title', (table) => {
  it.each(table.rows)('$id ($status: $source)', (row) => {
    const value = table.onSite.evaluate(row.inputs);
    const tolerance = toleranceOf(row, table.onSite.tolerance);
    expect(agrees(value, row.expected, tolerance), `${value} is not ${row.expected} ± ${tolerance}`).toBe(true);
    expect(agrees(value, row.expected + 3 * tolerance, tolerance)).toBe(false);
    expect(agrees(value, row.expected - 3 * tolerance, tolerance)).toBe(false);
  });
});

describe('the tables of published values', () => {
  it('hold every derived point to a published value as a site derives it, not by its equation alone', () => {
    const driven = new Set(onSite.map((table) => table.onSite.point));
    const bare = derivedPoints.map(({ id }) => id).filter((id) => !driven.has(id));
    expect(bare.sort()).toEqual([...definitionOnly].sort());
  });

  it('hold every derived point that has an equation to be held against', () => {
    const covered = new Set(allTables.flatMap(({ subject }) => ('point' in subject ? [subject.point] : [])));
    const bare = derivedPoints.map(({ id }) => id).filter((id) => !covered.has(id));
    expect(bare.sort()).toEqual([...definitionOnly].sort());
  });

  it('are found, each with rows, each row with its source', () => {
    expect(allTables.length).toBeGreaterThan(20);
    for (const table of allTables) {
      expect(table.rows.length, table.title).toBeGreaterThan(0);
      for (const row of table.rows) expect(row.source).not.toBe('');
    }
  });
});
