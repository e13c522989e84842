import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { journalFile } from '../../backend/src/connections/alarm-journal/alarm-journal.provider';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { toSettings } from '../../backend/src/evaluation/alarm-rules/settings/to-settings';
import { writeAlarmListCommand } from '../../backend/src/main/care/write-alarm-list-command';
import { smallSiteFile } from '../integration/app/running-app';
import { stopAfterEach } from '../helpers/stop-after';
import { temporaryFolder } from '../helpers/temporary-folder';

const keep = stopAfterEach();
const old = toSettings('MARGIN-1', undefined);

/** Runs the command on a data folder; what it said and what it complained of. */
async function run(dataFolder: string, args: readonly string[], alarmList: string | null = null) {
  const [said, complaints]: [string[], string[]] = [[], []];
  const code = await writeAlarmListCommand({
    args,
    dataFolder,
    siteFile: smallSiteFile,
    alarmList,
    say: (text) => said.push(text),
    complain: (text) => complaints.push(text),
  });
  return { code, said: said.join('\n'), complaints: complaints.join('\n') };
}

interface Written {
  readonly site: string;
  readonly version: unknown;
  readonly entries: Readonly<Record<string, { readonly changeLink?: string; readonly units?: object }>>;
}

describe('the command that writes the alarm list', () => {
  it('writes what runs, with the changes of a journal that the program has open, and leaves the journal as it is', async () => {
    const { path } = keep(await temporaryFolder());
    const journal = new SqliteAlarmJournal(join(path, journalFile));
    keep({ stop: () => journal.close() });
    const change = { entry: 'MARGIN-1', scope: { kind: 'unit', id: 'm1' }, set: { limit: 7250 } } as const;
    const who = { reason: 'a reason', link: 'order 17', operator: 'Ines', station: 'desk' };
    journal.appendSetting({ id: 'setting-1', atMs: 0, ...change, ...who, old, new: { ...old, limit: 7250 } }, 0);
    const head = journal.head();

    const file = join(path, 'list.yaml');
    expect(await run(path, [file])).toMatchObject({ code: 0, complaints: '' });
    const written = parse(readFileSync(file, 'utf8')) as Written;
    expect(written).toMatchObject({ site: 'small', version: null });
    expect(written.entries['MARGIN-1']).toMatchObject({
      changeLink: 'order 17',
      units: { m1: { limit: '7.25 kPa' } },
    });
    expect(journal.head()).toEqual(head);
  });

  it('writes to standard output where no file is named, and needs no journal', async () => {
    const { path } = keep(await temporaryFolder());
    const { code, said } = await run(path, []);
    expect(code).toBe(0);
    expect((parse(said) as Written).entries['MARGIN-1']?.units).toMatchObject({ m1: { limit: '6 kPa' } });
  });

  it('writes over nothing, and refuses what it cannot read', async () => {
    const { path } = keep(await temporaryFolder());
    const file = join(path, 'list.yaml');
    writeFileSync(file, 'site: small\n');
    expect(await run(path, [file])).toMatchObject({
      code: 2,
      complaints: expect.stringContaining('is there already') as string,
    });
    expect(readFileSync(file, 'utf8')).toBe('site: small\n');
    const other = join(path, 'other.yaml');
    expect(await run(path, [other], file)).toMatchObject({
      code: 1,
      complaints: expect.stringMatching(/list\.yaml:1:1: version: is missing[^]*No list was written/) as string,
    });
    writeFileSync(join(path, journalFile), 'no journal at all');
    expect(await run(path, [other])).toMatchObject({
      code: 1,
      complaints: expect.stringContaining(journalFile) as string,
    });
    expect(await run(path, ['--help'])).toMatchObject({
      code: 2,
      complaints: expect.stringContaining('Usage') as string,
    });
  });
});
