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

/** Every row of the journal of a running program beyond a sequence, as an admin reads it, page by page. */
export async function journalOf({ url, signIn }: Ebbline, beyond = 0): Promise<readonly JournalRow[]> {
  const headers = await signIn.admin();
  const read = async (path: string): Promise<Page> => {
    const reply = await fetch(`${url}${path}`, { headers });
    if (reply.status !== 200) throw new Error(`${path} answered ${reply.status}: ${await reply.text()}`);
    return (await reply.json()) as Page;
  };
  return rowsOf(read, beyond);
}

async function rowsOf(read: (path: string) => Promise<Page>, beyond = 0): Promise<readonly JournalRow[]> {
  const rows: JournalRow[] = [];
  for (let after: number | null = beyond; after !== null;) {
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
