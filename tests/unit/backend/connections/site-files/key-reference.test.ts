import { readFileSync } from 'node:fs';
import { format } from 'prettier';
import { describe, expect, it } from 'vitest';
import { siteFileKeys } from '@ebbline/shared/contract/site-file-keys';
import { catalogue } from '../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import { catalogueEntries } from '../../../../../backend/src/connections/site-files/catalogue-entries';
import { keyReference } from '../../../../../backend/src/connections/site-files/key-reference';

const written = readFileSync(new URL('../../../../../backend/docs/site-file.md', import.meta.url), 'utf8');

describe('reference of the site file', () => {
  it('is not stale (run `npm run site:check -- --keys > backend/docs/site-file.md`, then prettier on it)', async () => {
    const fresh = await format(keyReference(), { parser: 'markdown', printWidth: 120, singleQuote: true });
    expect(written).toBe(fresh);
  });

  it('has a row for every key', () => {
    expect(siteFileKeys().filter(({ path }) => !written.includes(`| \`${path}\``))).toEqual([]);
  });
});

describe('catalogueEntries', () => {
  it('gives a quantity to the limit of every entry that has a limit', () => {
    const wanted = Object.values(catalogue).map(({ id }) => id);
    expect([...catalogueEntries.keys()].sort()).toEqual([...wanted].sort());
  });
});
