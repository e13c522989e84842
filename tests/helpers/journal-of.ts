import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { expect } from 'vitest';
import type { Ebbline } from './ebbline';

/** Every row of the journal of a running program, page by page. */
export async function journalOf(ebbline: Ebbline): Promise<readonly JournalRow[]> {
  const rows: JournalRow[] = [];
  for (let after: number | null = 0; after !== null;) {
    const page: { rows: JournalRow[]; next: number | null } = await ebbline.get(`/api/alarms/journal?after=${after}`);
    rows.push(...page.rows);
    after = page.next;
  }
  return rows;
}

/** No row is missing, and each names the one before it. */
export function expectWholeChain(rows: readonly JournalRow[]): void {
  rows.slice(1).forEach((row, i) => {
    expect(row.sequence).toBe((rows[i]?.sequence ?? 0) + 1);
    expect(row.previousHash).toBe(rows[i]?.hash);
  });
}
