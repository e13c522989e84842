import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { expect } from 'vitest';
import type { Ebbline } from './ebbline';

interface Page {
  readonly rows: readonly JournalRow[];
  readonly next: number | null;
}

/** The rows of the journal of a running program, but for those of people and access. */
export const plantJournalOf = (ebbline: Ebbline): Promise<readonly JournalRow[]> =>
  rowsOf((path) => ebbline.get<Page>(path));

/** Every row of the journal of a running program, as an admin reads it, page by page. */
export async function journalOf({ url, signIn }: Ebbline): Promise<readonly JournalRow[]> {
  const headers = await signIn.admin();
  return rowsOf(async (path) => (await (await fetch(`${url}${path}`, { headers })).json()) as Page);
}

async function rowsOf(read: (path: string) => Promise<Page>): Promise<readonly JournalRow[]> {
  const rows: JournalRow[] = [];
  for (let after: number | null = 0; after !== null;) {
    const page: Page = await read(`/api/alarms/journal?after=${after}`);
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
