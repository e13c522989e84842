import type { JournalPage } from '@ebbline/shared/contract/alarm';
import type { LimitTrial } from '@ebbline/shared/contract/limit-trial';
import { describe, expect, it } from 'vitest';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { postJson, startApp, type RunningApp } from './running-app';
import { connectSender } from './telemetry';

const keep = stopAfterEach();
const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);
const iso = (second: number): string => new Date(startMs + second * 1000).toISOString();
const request = { entry: 'WATER-1', units: ['m1'], from: iso(0), to: iso(80), proposed: { onDelaySeconds: 30 } };

/** Water is found for 20 s from the 30th second on. */
async function wetApp(): Promise<RunningApp> {
  const app = keep(await startApp({ variables: { EBBLINE_CLOCK: 'source' } }));
  const sender = keep(await connectSender(app.mqttUrl));
  for (let second = 0; second < 90; second += 1)
    await sender.m1(startMs + second * 1000, { leak: second >= 30 && second < 50 ? 'wet' : 'dry' });
  const isRecorded = async (): Promise<boolean> => {
    const path = `/api/history?unit=m1&point=water.found&from=${iso(0)}&to=${iso(80)}&buckets=1`;
    return (await app.get<{ count: number[] }>(path)).count[0] === 80;
  };
  await until(isRecorded);
  return app;
}

const start = async (app: RunningApp, changed: object = {}): Promise<{ status: number; body: LimitTrial }> => {
  const reply = await app.send('/api/limit-trials', postJson({ ...request, ...changed }));
  return { status: reply.status, body: (await reply.json()) as LimitTrial };
};

describe('a limit trial through the API', () => {
  it('tells what was raised live as the journal has it, and that a longer delay would have raised nothing', async () => {
    const app = await wetApp();
    const started = await start(app);
    expect(started).toMatchObject({ status: 200, body: { entry: 'WATER-1', method: 'stored' } });
    const path = `/api/limit-trials/${started.body.id}`;
    const trial = await until(async () => {
      const found = await app.get<LimitTrial>(path);
      return found.state === 'done' ? found : null;
    });
    const { rows } = await app.get<JournalPage>(`/api/alarms/journal?from=${iso(-60)}&after=0`);
    const raised = rows.find((row) => row.alarm === 'm1:WATER-1');
    expect(trial.live?.episodes).toHaveLength(1);
    const apartMs = Date.parse(trial.live?.episodes[0]?.from ?? '') - Date.parse(raised?.sourceTime ?? '');
    expect(Math.abs(apartMs)).toBeLessThanOrEqual(1000);
    expect(trial.live).toMatchObject({ raised: 1, settings: { limit: null, onDelaySeconds: 1, enabled: true } });
    expect(trial.proposed).toMatchObject({ raised: 0, episodes: [], settings: { onDelaySeconds: 30 } });
    expect(trial).toMatchObject({ secondsJudged: 80, secondsMissing: 0 });
    const cancelled = await app.send(`${path}/cancel`, postJson({}));
    expect([cancelled.status, ((await cancelled.json()) as LimitTrial).state]).toEqual([200, 'done']);
    expect(app.faults).toEqual([]);
  });

  it('refuses with a problem that says what is wrong', async () => {
    const app = keep(await startApp({ variables: { EBBLINE_CLOCK: 'source' } }));
    for (const [changed, status, code] of [
      [{ entry: 'WATER-9' }, 404, 'TRIAL_ENTRY_UNKNOWN'],
      [{ entry: 'COM-1' }, 409, 'TRIAL_ENTRY_NOT_TRIED'],
      [{ units: ['m9'] }, 404, 'UNIT_UNKNOWN'],
      [{ proposed: { limit: 2 } }, 400, 'TRIAL_SETTING_ABSENT'],
      [{ to: iso(-5) }, 400, 'TRIAL_RANGE'],
      [{ proposed: { onDelaySeconds: -1 } }, 400, 'BODY_MALFORMED'],
    ] as const)
      expect(await start(app, changed)).toMatchObject({ status, body: { code } });
    const unknown = await app.send('/api/limit-trials/none');
    expect([unknown.status, await unknown.json()]).toMatchObject([404, { code: 'TRIAL_UNKNOWN' }]);
  });
});
