import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import { expect, test } from 'vitest';
import { unitId } from '../bench/bench-site';
import { startBroker } from '../helpers/broker';
import { type Ebbline, ebblineEnvironment, projectRoot, startEbbline } from '../helpers/ebbline';
import { expectWholeChain, journalOf } from '../helpers/journal-of';
import { startProcess } from '../helpers/server-process';
import { stopAfterEach } from '../helpers/stop-after';
import { temporaryFolder } from '../helpers/temporary-folder';
import { until } from '../helpers/until';
import { dataFolder } from './data-folder';
import { keepDoing, startSender, writeSite } from './row-of-units';

const units = 24;
const keep = stopAfterEach();

/** `npm run backup` or `npm run restore`, as a process of its own; what it printed. */
async function care(command: 'backup' | 'restore', data: string, folder: string): Promise<string> {
  const args = [join(projectRoot, `backend/${command}.mjs`), folder];
  const ran = keep(startProcess(process.execPath, args, { env: ebblineEnvironment({ data }) }));
  const code = await ran.exit;
  expect(`${code} ${ran.output()}`).toMatch(/^0 /);
  return ran.output();
}

const headOf = (said: string): { sequence: number; hash: string } => {
  const [, sequence, hash = ''] = /head: sequence (\d+), hash ([0-9a-f]{64})/.exec(said) ?? [];
  return { sequence: Number(sequence), hash };
};

async function historyOf(ebbline: Ebbline, unit: number, fromMs: number, toMs: number): Promise<HistoryColumns> {
  const query = new URLSearchParams({
    unit: unitId(unit),
    point: 'supply.temperature',
    from: new Date(fromMs).toISOString(),
    to: new Date(toMs).toISOString(),
    buckets: String((toMs - fromMs) / 1000),
  });
  return ebbline.get<HistoryColumns>(`/api/history?${query.toString()}`);
}

/** What the rows add up to: each alarm that stands, with its state and who acknowledged it. */
function standingBy(rows: readonly JournalRow[]): Map<string, string> {
  const standing = new Map<string, string>();
  for (const { alarm, entry, to } of rows) {
    if (alarm === null || entry !== 'WATER-1' || to === null) continue;
    if (to === 'normal') standing.delete(alarm);
    else standing.set(alarm, to);
  }
  return standing;
}

test('a program that is backed up at work, killed, and restored to a new folder has the same alarms, journal and history', async () => {
  const data = keep(await dataFolder());
  const other = keep(await dataFolder());
  const files = keep(await temporaryFolder());
  const backUp = join(files.path, 'back-up');
  const broker = keep(await startBroker());
  const env = {
    EBBLINE_SITE: await writeSite(files.path, units),
    EBBLINE_MQTT_URL: broker.url,
    EBBLINE_SIMULATOR: 'off',
  };
  const fromMs = Math.ceil(Date.now() / 1000) * 1000;
  const first = keep(await startEbbline({ data: data.path, env }));
  const sender = keep(await startSender(broker.url, units));
  const wet = keep(keepDoing(() => sender.sendAll({ 'water.found': 1 }), 200));
  const raised = async (): Promise<string[]> =>
    (await first.alarms()).filter(({ entry }) => entry === 'WATER-1').map(({ id }) => id);
  await until(async () => (await raised()).length === units, { everyMs: 100, what: 'the alarms' });
  const alarms = await raised();
  const acknowledge = (alarm: string): Promise<Response> =>
    first.post(`/api/alarms/${encodeURIComponent(alarm)}/acknowledge`, { operator: 'Ines', comment: alarm });
  for (const alarm of alarms.slice(0, 8)) expect((await acknowledge(alarm)).status).toBe(200);
  const secondsKept = async (): Promise<number> =>
    (await historyOf(first, 0, fromMs, Math.ceil(Date.now() / 1000) * 1000)).count.filter((count) => count > 0).length;
  await until(async () => (await secondsKept()) >= 6, { everyMs: 250, what: 'six seconds of history' });

  // The rest is acknowledged while the back-up is written.
  const beforeMs = Math.floor(Date.now() / 1000) * 1000 - 3000;
  const acts = (async () => {
    for (const alarm of alarms.slice(8)) expect((await acknowledge(alarm)).status).toBe(200);
  })();
  const written = headOf(await care('backup', data.path, backUp));
  await acts;
  const journal = await journalOf(first);
  const history = await Promise.all([0, units - 1].map((unit) => historyOf(first, unit, fromMs, beforeMs)));
  expect(history[0]?.count.some((count) => count > 0)).toBe(true);
  first.child.kill('SIGKILL');
  await first.exit;
  await wet.stop();

  expect(headOf(await care('restore', other.path, backUp))).toEqual(written);
  const second = keep(await startEbbline({ data: other.path, env }));
  const rows = await journalOf(second);
  expectWholeChain(rows);
  const upToHead = journal.filter(({ sequence }) => sequence <= written.sequence);
  expect(upToHead.at(-1)?.hash).toBe(written.hash);
  expect(rows.slice(0, written.sequence)).toEqual(upToHead);
  const standing = (await second.alarms()).filter(({ entry }) => entry === 'WATER-1');
  expect(new Map(standing.map(({ id, state }) => [id, state]))).toEqual(standingBy(upToHead));
  expect(standing).toHaveLength(units);
  expect(standing.filter(({ acknowledgedBy }) => acknowledgedBy === 'Ines').length).toBeGreaterThanOrEqual(8);
  expect(await Promise.all([0, units - 1].map((unit) => historyOf(second, unit, fromMs, beforeMs)))).toEqual(history);
});

test('a data folder into which a restore did not end starts no program', async () => {
  const data = keep(await dataFolder());
  await mkdir(join(data.path, 'restore-unfinished'));
  const args = [join(projectRoot, 'backend/start.mjs')];
  const refused = keep(startProcess(process.execPath, args, { env: ebblineEnvironment({ data: data.path }) }));
  expect(await refused.exit).toBe(1);
  expect(refused.output()).toContain('did not end');
});
