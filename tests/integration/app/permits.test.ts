import type { HallFrame } from '@ebbline/shared/contract/live-feed';
import type { Permit, PermitList } from '@ebbline/shared/contract/permit';
import { describe, expect, it } from 'vitest';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { connectScreen, postJson, startApp, type RunningApp } from './running-app';
import { connectSender } from './telemetry';

const keep = stopAfterEach();
const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);
const request = {
  unit: 'm1',
  branch: 'r1',
  until: new Date(startMs + 3_600_000).toISOString(),
  expectedInLeak: 30 / 60_000,
  operator: 'Ines',
  comment: 'hose of server 4',
};

const open = (app: RunningApp, changed: object = {}) => app.send('/api/permits', postJson({ ...request, ...changed }));
const list = async (app: RunningApp): Promise<readonly Permit[]> => (await app.get<PermitList>('/api/permits')).permits;

async function runningAt(dataFolder: string): Promise<RunningApp> {
  const app = keep(await startApp({ dataFolder, variables: { EBBLINE_CLOCK: 'source' } }));
  const sender = keep(await connectSender(app.mqttUrl));
  for (let second = 0; second < 5; second++) await sender.m1(startMs + second * 1000);
  await until(async () => (await app.get<{ samples: number }>('/api/intake')).samples > 50);
  return app;
}

describe('a permit', () => {
  it('is opened by a name, shown on the hall, kept over a restart, and closed once', async () => {
    const folder = keep(await temporaryFolder());
    const app = await runningAt(folder.path);
    const hall = keep(connectScreen(app.url));
    hall.show({ screen: 'hall', hall: 'north' });
    const reply = await open(app);
    expect(reply.status).toBe(200);
    const opened = (await reply.json()) as Permit;
    expect(opened).toMatchObject({ unit: 'm1', branch: 'r1', state: 'open', openedBy: 'Ines', closedAt: null });
    await until(() => (hall.frames.at(-1) as HallFrame | undefined)?.permits.some(({ id }) => id === opened.id));
    expect((await open(app)).status).toBe(409);
    await app.stop();

    const after = await runningAt(folder.path);
    expect(await list(after)).toEqual([opened]);
    const close = `/api/permits/${encodeURIComponent(opened.id)}/close`;
    const closed = await after.send(close, postJson({ operator: 'Otto', comment: 'hose is on again' }));
    expect(await closed.json()).toMatchObject({ state: 'closed', closedBy: 'Otto' });
    expect(await list(after)).toEqual([]);
    expect((await after.send(close, postJson({ operator: 'Otto' }))).status).toBe(404);
    const { rows } = await after.get<{ rows: { actor: string | null; reason: string | null }[] }>(
      '/api/alarms/journal',
    );
    const said = rows.filter(({ actor }) => actor !== null).map(({ actor, reason }) => [actor, reason]);
    expect(said).toEqual([
      ['Ines', expect.stringContaining('hose of server 4')],
      ['Otto', expect.stringContaining('hose is on again')],
    ]);
  });

  it('is refused without a name, for a branch that there is not, and for a time that has gone', async () => {
    const folder = keep(await temporaryFolder());
    const app = await runningAt(folder.path);
    const refusals = [{ operator: ' ' }, { branch: 'r99' }, { until: new Date(startMs - 1).toISOString() }];
    for (const changed of refusals) {
      const reply = await open(app, changed);
      expect(reply.status, JSON.stringify(changed)).toBeGreaterThanOrEqual(400);
      expect(reply.status).toBeLessThan(500);
    }
    expect(await list(app)).toEqual([]);
  });
});
