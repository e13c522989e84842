import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AlarmList, JournalRow } from '@ebbline/shared/contract/alarm';
import type { Health, HistoryColumns, Intake, UnitList } from '@ebbline/shared/contract/http-api';
import type { SiteState } from '@ebbline/shared/contract/site-state';
import { bundle, type Bundle } from '../../contract/journal-bundle';
import { temporaryFolder, type TemporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { connectScreen, postJson, smallSiteFile, startApp, type RunningApp, type Screen } from './running-app';
import { connectSender, telemetryOfM1, type Sender } from './telemetry';

const small = readFileSync(smallSiteFile, 'utf8');
const unitM1 = small.slice(small.indexOf('  m1:\n'), small.indexOf('  # A topic a point'));
/** Another unit like m1, and m1 gone. */
const withM3 = small.replace(
  '  # A topic a point',
  `${unitM1.replace('  m1:', '  m3:').replace('Unit one', 'Unit three')}\n  # A topic a point`,
);
const withoutM1 = withM3.replace(unitM1, '');

describe('a site file that changes while the program runs', () => {
  let folder: TemporaryFolder;
  let file: string;
  let worker: Bundle;
  let app: RunningApp;
  let sender: Sender;
  let screen: Screen;
  let second = Date.parse('2026-03-01T00:00:00Z');

  beforeAll(async () => {
    folder = await temporaryFolder();
    file = join(folder.path, 'site.yaml');
    writeFileSync(file, small);
    worker = await bundle(new URL('../../../backend/src/connections/site-files/site-worker.ts', import.meta.url));
    app = await startApp({
      variables: { EBBLINE_SITE: file, EBBLINE_CLOCK: 'source' },
      siteWorker: pathToFileURL(worker.file),
    });
    sender = await connectSender(app.mqttUrl);
    screen = connectScreen(app.url);
    screen.show({ screen: 'hall', hall: 'north' });
  });

  afterAll(async () => {
    screen.stop();
    await sender.stop();
    await app.stop();
    await folder.stop();
    worker.remove();
  });

  const state = (): Promise<SiteState> => app.get('/api/site/state');
  const alarmsNow = async (): Promise<readonly string[]> =>
    (await app.get<AlarmList>('/api/alarms')).alarms.map(({ id }) => id);
  const journal = async (): Promise<readonly JournalRow[]> =>
    (await app.get<{ rows: JournalRow[] }>('/api/alarms/journal')).rows;
  const refused = async (): Promise<number> =>
    (await app.get<Intake>('/api/intake')).refusals.reduce((sum, { count }) => sum + count, 0);

  /** Sends seconds of a unit like m1; the source clock moves with them. */
  async function send(unit: string, seconds: number, changed: Readonly<Record<string, unknown>> = {}): Promise<void> {
    for (let i = 0; i < seconds; i += 1) {
      second += 1000;
      await sender.raw(`small/${unit}/telemetry`, telemetryOfM1(second, changed));
    }
  }

  /** As editors do: a whole new file, renamed over the old one. */
  function replace(text: string): void {
    writeFileSync(`${file}.new`, text);
    renameSync(`${file}.new`, file);
  }

  const inForceAfter = (hash: string): Promise<SiteState> =>
    until(async () => {
      const now = await state();
      return now.contentHash !== hash && now.refused === null ? now : null;
    });

  it('judges by a changed limit after it is written in place, by itself', async () => {
    await send('m1', 3);
    await until(async () => (await app.get<Health>('/api/health')).lastSampleAge !== null);
    const { contentHash } = await state();
    // Ambient 99.9 kPa at 120 m less some 88 kPa at the low point under the floor: no margin of 40 kPa.
    writeFileSync(file, small.replace('MARGIN-1: { limit: 6 kPa }', 'MARGIN-1: { limit: 40 kPa, onDelay: 5 s }'));
    await inForceAfter(contentHash);
    await send('m1', 12);
    await until(async () => (await alarmsNow()).includes('m1:MARGIN-1'));
    expect(app.faults).toEqual([]);
  });

  it('takes in a new unit with its topics after a rename, and shows it on screens that are open', async () => {
    const { contentHash } = await state();
    const subscribed = await refused();
    replace(withM3);
    await inForceAfter(contentHash);
    const before = screen.frames.length;
    await send('m3', 3);
    await until(() => {
      const frame = screen.frames.at(-1);
      return screen.frames.length > before && frame?.screen === 'hall' && frame.loops.some(({ unit }) => unit === 'm3');
    });
    expect(await refused()).toBe(subscribed);
    await until(async () => (await app.get<UnitList>('/api/units')).units.length === 3);
  });

  it('ends the alarm of a unit that is taken out, and the journal says why', async () => {
    await send('m1', 5, { leak: 'wet' });
    await send('m3', 5, { leak: 'wet' });
    await until(async () => (await alarmsNow()).includes('m3:WATER-1'));
    expect(await alarmsNow()).toContain('m1:WATER-1');
    const loop = connectScreen(app.url);
    loop.show({ screen: 'loop', unit: 'm1' });
    await until(() => loop.frames.length > 0);
    const { contentHash } = await state();
    replace(withoutM1);
    await inForceAfter(contentHash);
    await send('m3', 2, { leak: 'wet' });
    await until(async () => !(await alarmsNow()).includes('m1:WATER-1'));
    expect(await alarmsNow()).toContain('m3:WATER-1');
    const last = (await journal()).filter(({ alarm }) => alarm === 'm1:WATER-1').at(-1);
    expect(last).toMatchObject({
      kind: 'transition',
      to: 'normal',
      reason: expect.stringMatching(/^configuration: /) as string,
    });
    await until(() => loop.refusals.some(({ code }) => code === 'VIEW_UNKNOWN_UNIT'));
    loop.stop();
  });

  it('refuses a faulty content whole, goes on with the one before, and says so until it is mended', async () => {
    const good = await state();
    replace(withoutM1.replace('unit: °F', 'unit: kPa').replace('hall: north', 'hall: west'));
    const broken = await until(async () => {
      const now = await state();
      return now.refused === null ? null : now;
    });
    expect(broken.contentHash).toBe(good.contentHash);
    expect(broken.refused?.faults.map(({ line, key }) => [typeof line, key])).toEqual(
      expect.arrayContaining([
        ['number', 'units.m3.hall'],
        ['number', 'units.m2.points.supply.temperature.unit'],
      ]),
    );
    const health = await app.get<Health>('/api/health');
    expect(health.reasons.find(({ code }) => code === 'SITE_FILE_REFUSED')?.message).toMatch(
      /the one before is in force/,
    );
    const before = screen.frames.length;
    await send('m3', 3, { leak: 'wet' });
    await until(() => screen.frames.length > before);
    expect(await alarmsNow()).toContain('m3:WATER-1');

    replace(withoutM1);
    await until(async () => (await state()).refused === null);
    expect((await app.get<Health>('/api/health')).reasons.some(({ code }) => code === 'SITE_FILE_REFUSED')).toBe(false);
  });

  it('is read at once when asked, and refuses what a running program can not change', async () => {
    writeFileSync(file, withoutM1.replace('id: small', 'id: other'));
    const asked = (await (await app.send('/api/site/reload', postJson({}))).json()) as SiteState;
    expect(asked.refused?.faults).toEqual([
      expect.objectContaining({ key: 'site.id', message: expect.stringMatching(/start Ebbline anew/) as string }),
    ]);
    writeFileSync(file, withoutM1);
    const mended = (await (await app.send('/api/site/reload', postJson({}))).json()) as SiteState;
    expect(mended.refused).toBeNull();
  });

  it('keeps the history of before and after under the same points', async () => {
    await send('m3', 3);
    const from = '2026-03-01T00:00:00Z';
    const query = (unit: string): string =>
      `/api/history?unit=${unit}&point=separator.pressure&from=${from}&to=2026-03-01T00:10:00Z&buckets=600`;
    const values = await until(async () => {
      const columns = await app.get<HistoryColumns>(query('m3'));
      const found = columns.mean.filter((value) => value !== null);
      return found.length >= 15 ? found : null;
    });
    expect(new Set(values)).toEqual(new Set([32_000]));
  });
});
