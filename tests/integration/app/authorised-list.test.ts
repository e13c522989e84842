import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { AlarmListing, SettingsAudit } from '@ebbline/shared/contract/alarm-list';
import { describe, expect, it } from 'vitest';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { smallSiteFile, startApp, type RunningApp } from './running-app';
import { adminOf, personWith, setByTwo } from './set-by-two';

const keep = stopAfterEach();

/** All that the small site sets, and one limit of it otherwise. */
const listOf = (version: string, m1Limit = '6.5 kPa'): string => `site: small
version: '${version}'
approvedBy: the cooling engineer
approvedOn: 2031-05-28
entries:
  MARGIN-1:
    owner: the night shift
    reviewBy: 2032-01-02
    changeLink: change 7
    site: { limit: 5 kPa, deadband: 0.5 kPa, onDelay: 10 s }
    halls: { north: { onDelay: 15 s } }
    units: { m1: { limit: ${m1Limit} } }
  DEW-1: { site: { limit: 2 K } }
`;

const listing = (app: RunningApp): Promise<AlarmListing> => app.get('/api/alarm-list');
const findings = async (app: RunningApp) => (await app.get<SettingsAudit>('/api/alarm-list/audit')).findings;

async function listFile(text: string) {
  const folder = keep(await temporaryFolder());
  const file = join(folder.path, 'list.yaml');
  writeFileSync(file, text);
  return {
    file,
    /** As editors do: a whole new file, renamed over the old one. */
    replace(next: string): void {
      writeFileSync(`${file}.new`, next);
      renameSync(`${file}.new`, file);
    },
  };
}

describe('the authorised list of a file', () => {
  it('is what the audit compares with, and a newer content takes its place or is refused whole', async () => {
    const { file, replace } = await listFile(listOf('3'));
    const app = keep(await startApp({ variables: { EBBLINE_ALARM_LIST: file, EBBLINE_CLOCK: 'source' } }));
    expect(app.said.join('\n')).toContain('version 3, approved by the cooling engineer on 2031-05-28');
    const { authorisedBy, entries } = await listing(app);
    expect(authorisedBy).toEqual({
      file: expect.stringMatching(/list\.yaml$/) as string,
      version: '3',
      approvedBy: 'the cooling engineer',
      approvedOn: '2031-05-28',
    });
    expect(entries.find(({ entry }) => entry === 'MARGIN-1')).toMatchObject({
      owner: 'the night shift',
      reviewBy: '2032-01-02',
      changeLink: 'change 7',
    });
    // Of the class of condensation: looked at again two years after the approval.
    expect(entries.find(({ entry }) => entry === 'DEW-1')).toMatchObject({ reviewBy: '2033-05-28', changeLink: null });
    const differing = { entry: 'MARGIN-1', scope: { kind: 'unit', id: 'm1' }, member: 'limit', authorised: 6500 };
    expect(await findings(app)).toMatchObject([{ ...differing, running: 6000, by: 'siteFile', change: null }]);

    const asked = { entry: 'MARGIN-1', scope: differing.scope, set: { limit: 7000 }, reason: 'seen at the last drill' };
    const omar = await personWith(app, 'engineer', 'Omar');
    expect((await setByTwo(app, await adminOf(app), omar, asked)).status).toBe(200);
    expect(await findings(app)).toMatchObject([{ ...differing, running: 7000, by: 'change' }]);

    replace(`${listOf('4', '7 kPa')}  DEW-2: { site: { limit: 1 kPa } }\n`);
    const refused = await until(async () => (await listing(app)).authorisedBy.refused);
    expect(refused).toEqual([expect.stringMatching(/list\.yaml:14:20: entries\.DEW-2\.site\.limit: .*"kPa"/)]);
    expect((await listing(app)).authorisedBy.version).toBe('3');
    expect(await findings(app)).toMatchObject([{ ...differing, running: 7000 }]);

    replace(listOf('5', '7 kPa'));
    await until(async () => (await listing(app)).authorisedBy.version === '5');
    expect((await listing(app)).authorisedBy.refused).toBeUndefined();
    expect(await findings(app)).toEqual([]);
    expect(app.faults).toEqual([]);
  });

  it('is refused once the site file has a place no more that it names, and the one before stays in force', async () => {
    const { file } = await listFile(`${listOf('3')}  DEW-2: { units: { m2: { onDelay: 30 s } } }\n`);
    const small = readFileSync(smallSiteFile, 'utf8');
    const site = await listFile(small);
    const app = keep(
      await startApp({
        variables: { EBBLINE_ALARM_LIST: file, EBBLINE_SITE: site.file, EBBLINE_CLOCK: 'source' },
      }),
    );
    site.replace(small.replace(/^ {2}m2:\n(?: {4}.*\n|\n)*/m, ''));
    const refused = await until(async () => (await listing(app)).authorisedBy.refused);
    expect(refused).toEqual([
      expect.stringMatching(/list\.yaml:14:21: entries\.DEW-2\.units\.m2: the site has no unit/),
    ]);
    expect((await listing(app)).authorisedBy.version).toBe('3');
    site.replace(small);
    await until(async () => (await listing(app)).authorisedBy.refused === undefined);
    expect(app.faults).toEqual([]);
  });

  it('keeps the start from being made where it is faulty, saying where and why', async () => {
    const { file } = await listFile(`${listOf('3')}  DEW-9: {}\n`);
    const start = startApp({ variables: { EBBLINE_ALARM_LIST: file } });
    await expect(start).rejects.toThrow(/list\.yaml:14:3: entries\.DEW-9: the catalogue has no entry "DEW-9"/);
    await expect(start).rejects.toThrow(/set EBBLINE_ALARM_LIST to another one/);
  });
});
