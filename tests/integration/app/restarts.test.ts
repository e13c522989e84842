import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { reportSchema } from '@ebbline/shared/contract/report';
import { expect, test } from 'vitest';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { startApp } from './running-app';

const keep = stopAfterEach();

test('a restart stands in the journal and in the report', async () => {
  const folder = keep(await temporaryFolder());
  const beganMs = Date.now();
  const first = await startApp({ dataFolder: folder.path });
  await first.stop();
  const again = keep(await startApp({ dataFolder: folder.path }));
  const { rows } = await again.get<{ rows: JournalRow[] }>('/api/alarms/journal?kind=system');
  const told = rows.filter(({ cause }) => cause?.startsWith('program') === true);
  expect(told.map(({ cause }) => cause)).toEqual(['programStarted', 'programEnded', 'programStarted']);
  expect(told[2]?.facts?.program?.before).toMatchObject({ startedAt: null, endedAt: told[1]?.time });
  const [from, to] = [beganMs - 1000, Date.now() + 60_000].map((ms) => new Date(ms).toISOString());
  const report = reportSchema.parse(await again.get(`/api/report?from=${from}&to=${to}`));
  expect(report.changes.map(({ kind, by }) => [kind, by])).toEqual([
    ['program', null],
    ['program', null],
    ['program', null],
  ]);
  expect(report.changes[2]?.what).toMatch(/^Ebbline \S+ started; the run before it had ended in order$/);
});
