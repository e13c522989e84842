import { expect } from 'vitest';

/**
 * The fault table was worked out with another model of the same plant: its signs and orders of size are
 * dependable, its digits within 30 %. (Common practice and arithmetic, no published source.)
 */
export const tableTolerance = 0.3;

export function expectByTable(change: number, table: number): void {
  expect(Math.abs(change / table - 1), `${change} against ${table} of the table`).toBeLessThanOrEqual(tableTolerance);
}

export function expectUnmoved(change: number, most: number, what: string): void {
  expect(Math.abs(change), `${what} has to stay`).toBeLessThanOrEqual(most);
}
