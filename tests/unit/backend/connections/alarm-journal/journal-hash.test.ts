import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import {
  canonicalForm,
  firstPreviousHash,
  journalHash,
} from '../../../../../backend/src/connections/alarm-journal/journal-hash';
import { systemEntry } from '../../../../../backend/src/connections/alarm-journal/to-journal-entry';

const entry = systemEntry({ atMs: 1000, reason: 'site “A” reloaded\n', actor: 'Ann' }, 2000);

describe('the canonical form of a journal row', () => {
  it('is one JSON array of sequence, columns and previous hash, written out by hand here', () => {
    // 21 columns: recorded, happened, kind, 14 nulls, actor, station, reason, record.
    const nulls = Array.from({ length: 14 }, () => 'null').join(',');
    const expected = `[7,2000,1000,"system",${nulls},"Ann",null,"site “A” reloaded\\n",null,"${firstPreviousHash}"]`;
    expect(canonicalForm(7, entry, firstPreviousHash)).toBe(expected);
  });

  it('is hashed by SHA-256, whose value for "abc" FIPS 180-4 examples give', () => {
    const abc = createHash('sha256').update('abc', 'utf8').digest('hex');
    expect(abc).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    const text = canonicalForm(7, entry, firstPreviousHash);
    expect(journalHash(7, entry, firstPreviousHash)).toBe(createHash('sha256').update(text, 'utf8').digest('hex'));
  });

  it('differs where sequence, a column or the previous hash differs', () => {
    const hashes = [
      journalHash(7, entry, firstPreviousHash),
      journalHash(8, entry, firstPreviousHash),
      journalHash(7, { ...entry, actor: 'Bob' }, firstPreviousHash),
      journalHash(7, entry, 'f'.repeat(64)),
    ];
    expect(new Set(hashes).size).toBe(4);
  });
});
