import type { TightnessList, TightnessTest } from '@ebbline/shared/contract/tightness-test';
import { describe, expect, it } from 'vitest';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { postJson, startApp, type RunningApp } from './running-app';
import { connectSender } from './telemetry';

const keep = stopAfterEach();
const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);
const tests = '/api/units/m1/tightness-tests';
const litrePerMin = 1 / 60_000;
/** A dry loop of one cubic metre, its source shut off by hand. */
const request = {
  plannedMinutes: 30,
  acceptanceLimit: 1 * litrePerMin,
  dry: true,
  sourceIsolated: true,
  gasVolume: 1,
  operator: 'Ines',
  comment: 'after the new gasket',
};

const start = (app: RunningApp, changed: object = {}) => app.send(tests, postJson({ ...request, ...changed }));
const list = (app: RunningApp) => app.get<TightnessList>(tests);

interface Plant {
  readonly app: RunningApp;
  /** Sends seconds on end, the separator's pressure rising by so many kPa in each. */
  run(seconds: number, kpaPerSecond: number): Promise<void>;
}

async function plantAt(dataFolder: string, fromMs = startMs): Promise<Plant> {
  const app = keep(await startApp({ dataFolder, variables: { EBBLINE_CLOCK: 'source' } }));
  const sender = keep(await connectSender(app.mqttUrl));
  let second = 0;
  let pressure = 20;
  const run: Plant['run'] = async (seconds, kpaPerSecond) => {
    for (let i = 0; i < seconds; i += 1) {
      await sender.m1(fromMs + second * 1000, { separator: { p: pressure }, return: { t: 20 } });
      pressure += kpaPerSecond;
      second += 1;
    }
    const last = new Date(fromMs + (second - 1) * 1000).toISOString();
    await until(async () => (await app.get<{ clock: { now: string } }>('/api/health')).clock.now === last);
  };
  await run(5, 0);
  return { app, run };
}

describe('a pressure-rise test through the API', () => {
  it('is started by a name with the cautions first, finds the leak, is ended, and is kept over a restart', async () => {
    const folder = keep(await temporaryFolder());
    const { app, run } = await plantAt(folder.path);
    expect((await list(app)).cautions.join(' ')).toMatch(/vacuum.*glasses.*lock out/is);
    const reply = await start(app);
    expect(reply.status).toBe(200);
    const started = (await reply.json()) as TightnessTest;
    expect(started).toMatchObject({ state: 'running', startedBy: 'Ines', begin: { gasVolume: 1 }, result: null });
    expect(started.cautions).toEqual((await list(app)).cautions);
    expect((await start(app)).status).toBe(409);

    // 1 m³ · 0.5 Pa/s = 0.5 Pa m³/s at 20 °C: 0.296 free L/min.
    await run(330, 0.0005);
    const end = `${tests}/${encodeURIComponent(started.id)}/end`;
    const ended = (await (await app.send(end, postJson({ operator: 'Otto' }))).json()) as TightnessTest;
    expect(ended).toMatchObject({ state: 'ended', endedFor: 'endedByPerson', endedBy: 'Otto', verdict: 'passes' });
    expect(ended.result?.throughput).toBeCloseTo(0.5, 3);
    expect(ended.summary).toMatch(/^Passes: .*0\.296 ± .* free L\/min/);
    expect((await app.send(end, postJson({ operator: 'Otto' }))).status).toBe(404);
    const again = (await (await start(app)).json()) as TightnessTest;
    await app.stop();

    const after = await plantAt(folder.path, startMs + 600_000);
    const kept = await list(after.app);
    expect(kept.tests).toMatchObject([
      { id: again.id, state: 'ended', endedFor: 'interrupted', verdict: null },
      { id: started.id, summary: ended.summary },
    ]);
    expect(await after.app.get(`${tests}/${encodeURIComponent(started.id)}`)).toEqual(ended);
    const { rows } = await after.app.get<{ rows: { reason: string | null }[] }>('/api/alarms/journal');
    const said = rows.map(({ reason }) => reason ?? '').filter((reason) => reason.startsWith('tightness test'));
    expect(said).toEqual([
      'tightness test started for 30 min: after the new gasket',
      'tightness test ended by a person, passes',
      'tightness test started for 30 min: after the new gasket',
      'tightness test interrupted by a restart of the program',
    ]);
  });

  it('is refused with what is in the way: flow, a running source, an unknown gas volume', async () => {
    const folder = keep(await temporaryFolder());
    const { app } = await plantAt(folder.path);
    expect((await list(app)).refusals).toMatchObject([{ code: 'TIGHTNESS_NO_VOLUME' }]);
    const wet = (await (await start(app, { dry: false, sourceIsolated: false })).json()) as Record<string, string>;
    expect(wet['code']).toBe('TIGHTNESS_SOURCE_RUNS');
    expect(wet['detail']).toMatch(/vacuum source runs.*water flows/s);
    expect((await start(app, { operator: ' ' })).status).toBe(400);
    expect((await app.send('/api/units/none/tightness-tests', postJson(request))).status).toBe(404);
    expect((await list(app)).tests).toEqual([]);
  });
});
