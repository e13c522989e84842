import { readFile } from 'node:fs/promises';
import type { SiteCheck } from '@ebbline/shared/contract/site-state';
import { describe, expect, it } from 'vitest';
import { stopAfterAll } from '../../helpers/stop-after';
import { postJson, smallSiteFile, startApp } from './running-app';

const keep = stopAfterAll();
const app = keep(await startApp());
const check = async (text: string) => (await app.send('/api/site/check', postJson({ text }))).json();

describe('a text that is to be a site file', () => {
  it('is summed up where it would do', async () => {
    const said = (await check(await readFile(smallSiteFile, 'utf8'))) as SiteCheck;
    expect(said).toMatchObject({ accepted: true, faults: [] });
    expect(said.summary).toContain('2 units');
  });

  it('is refused with every fault by line and key where it would not', async () => {
    const text = (await readFile(smallSiteFile, 'utf8')).replace('ratedFlow: 346 L/min', 'ratedFlow: 346 parsec');
    const said = (await check(text)) as SiteCheck;
    expect(said.accepted).toBe(false);
    expect(said.faults[0]).toMatchObject({ key: expect.stringContaining('ratedFlow') });
    expect(said.faults[0]?.line).toBe(text.split('\n').findIndex((line) => line.includes('parsec')) + 1);
  });

  it('may be as long as the file of thousands of units, and no longer', async () => {
    const long = `${'# a comment\n'.repeat(100_000)}site: {}`;
    expect((await app.send('/api/site/check', postJson({ text: long }))).status).toBe(200);
    expect((await app.send('/api/site/check', postJson({ text: 'x'.repeat(5_000_000) }))).status).toBe(413);
  });

  it('does no harm whatever it is', async () => {
    for (const text of ['', '\0', '[[[[', '&a [*a]', 'a: &b {c: *b}', '!!binary x', '- 1', '"'.repeat(1000)])
      expect(await check(text), text).toMatchObject({ accepted: false });
    expect(app.faults).toEqual([]);
  });
});
