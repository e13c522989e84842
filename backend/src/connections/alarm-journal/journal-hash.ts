import { createHash } from 'node:crypto';
import { entryColumns, type JournalEntry } from './journal-entry';

/** What the first row names as the hash before it. */
export const firstPreviousHash = '0'.repeat(64);

/**
 * Canonical form of a row: the JSON text (ECMA-404; numbers and strings as ECMAScript's JSON.stringify
 * writes them, no white space) of one array `[sequence, …the columns of entryColumns in their order…,
 * previousHash]`, with the text of `facts` before `previousHash` where the row has facts: rows of before there
 * were any keep their hash, and the length tells which it is. Its hash is SHA-256 (FIPS 180-4) over the UTF-8 bytes of that text, in lower-case hex.
 * Row n names the hash of row n − 1, so a changed, missing or inserted row breaks every row after it.
 */
export function canonicalForm(sequence: number, entry: JournalEntry, previousHash: string): string {
  const facts = entry.facts === null ? [] : [entry.facts];
  return JSON.stringify([sequence, ...entryColumns.map(([, field]) => entry[field]), ...facts, previousHash]);
}

export function journalHash(sequence: number, entry: JournalEntry, previousHash: string): string {
  return createHash('sha256')
    .update(canonicalForm(sequence, entry, previousHash), 'utf8')
    .digest('hex');
}
