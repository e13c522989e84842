import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { AlarmListing, SettingChanges, SettingsAudit } from '@ebbline/shared/contract/alarm-list';
import { describe, expect, it } from 'vitest';
import { adminName } from '../../helpers/sign-in';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { smallSiteFile, startApp, type RunningApp } from './running-app';
import { adminOf, personWith, setByTwo, type Answer } from './set-by-two';

const keep = stopAfterEach();
const small = readFileSync(smallSiteFile, 'utf8');
/** A second step that a first step of 3 kPa has passed. */
const stepped = small.replace('  DEW-1: { limit: 2 K }', '  DEW-1: { limit: 2 K }\n  MARGIN-2: { limit: 4 kPa }');

/** Asked for by the admin, approved by an engineer who is added for it. */
async function change(app: RunningApp, asked: object): Promise<Answer> {
  const scope = { kind: 'unit', id: 'm2' };
  added += 1;
  const second = await personWith(app, 'engineer', `Engineer ${added}`);
  return setByTwo(app, await adminOf(app), second, { entry: 'MARGIN-1', scope, reason: 'a drill', ...asked });
}
let added = 0;

const audit = (app: RunningApp): Promise<SettingsAudit> => app.get('/api/alarm-list/audit');
const reasons = async (app: RunningApp): Promise<string[]> =>
  (await app.get<{ reasons: { code: string }[] }>('/api/health')).reasons.map(({ code }) => code);
const causes = async (app: RunningApp): Promise<(string | null | undefined)[]> =>
  (await app.get<{ rows: JournalRow[] }>('/api/alarms/journal')).rows.map(({ cause }) => cause);
const runningLimit = async (app: RunningApp): Promise<number | null | undefined> =>
  (await app.get<AlarmListing>('/api/alarm-list')).entries
    .find(({ entry }) => entry === 'MARGIN-1')
    ?.settings.find(({ scope }) => scope.kind === 'unit' && scope.id === 'm2')?.running.limit;

describe('a change that a new site file leaves behind', () => {
  it('is not in force and told to be so, over a reload and a restart, until somebody sets the place anew', async () => {
    const data = keep(await temporaryFolder());
    const file = join(data.path, 'site.yaml');
    const write = (text: string): void => {
      writeFileSync(`${file}.new`, text);
      renameSync(`${file}.new`, file);
    };
    write(small);
    const variables = { EBBLINE_SITE: file, EBBLINE_CLOCK: 'source' };
    const app = await startApp({ variables, dataFolder: join(data.path, 'data') });
    expect((await change(app, { set: { limit: 3000 } })).status).toBe(200);
    expect(await runningLimit(app)).toBe(3000);
    expect((await audit(app)).refused).toEqual([]);

    write(stepped);
    const [left] = await until(async () => {
      const { refused } = await audit(app);
      return refused.length > 0 ? refused : undefined;
    });
    expect(left).toMatchObject({ actor: adminName, reason: 'a drill', refused: { code: 'SETTING_STEPS' } });
    expect(await runningLimit(app)).not.toBe(3000);
    expect(await reasons(app)).toContain('SETTINGS_REFUSED');
    expect(await causes(app)).toContain('settingRefused');
    await app.stop();

    const again = keep(await startApp({ variables, dataFolder: join(data.path, 'data') }));
    expect(await runningLimit(again)).not.toBe(3000);
    expect(await reasons(again)).toContain('SETTINGS_REFUSED');
    expect((await causes(again)).filter((cause) => cause === 'settingRefused')).toHaveLength(1);
    expect((await again.get<SettingChanges>('/api/alarm-list/changes')).changes).toMatchObject([
      { refused: { code: 'SETTING_STEPS' } },
    ]);

    // Somebody who saw what ran before the file was changed is told that it runs no more.
    expect(await change(again, { set: { limit: 7000 }, basedOn: { limit: 3000 } })).toMatchObject({
      status: 409,
      body: { code: 'SETTING_CHANGED_MEANWHILE', running: { limit: 5000 }, change: null },
    });
    expect((await change(again, { set: { limit: 7000 }, basedOn: { limit: 5000 } })).status).toBe(200);
    expect([(await audit(again)).refused, await runningLimit(again)]).toEqual([[], 7000]);
    expect(await reasons(again)).not.toContain('SETTINGS_REFUSED');
    expect((await causes(again)).at(-1)).toBe('settingFits');
    expect([...app.faults, ...again.faults]).toEqual([]);
  });

  it('is in force again, and said to be so, once the file that it was made for is back', async () => {
    const data = keep(await temporaryFolder());
    const file = join(data.path, 'site.yaml');
    writeFileSync(file, small);
    const app = keep(await startApp({ variables: { EBBLINE_SITE: file, EBBLINE_CLOCK: 'source' } }));
    await change(app, { set: { limit: 3000 } });
    for (const [text, refused] of [
      [stepped, 1],
      [small, 0],
    ] as const) {
      writeFileSync(`${file}.new`, text);
      renameSync(`${file}.new`, file);
      await until(async () => (await audit(app)).refused.length === refused);
    }
    expect(await runningLimit(app)).toBe(3000);
    await until(async () => (await causes(app)).includes('settingFits'));
  });
});
