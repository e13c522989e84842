import type { PointList } from '@ebbline/shared/contract/http-api';
import type { GuidedList, GuidedSurvey, GuidedTest } from '@ebbline/shared/contract/guided-test';
import { guidedListSchema, guidedSurveySchema, guidedTestSchema } from '@ebbline/shared/contract/guided-test';
import { expect, test } from 'vitest';
import { stopAfterEach } from '../../helpers/stop-after';
import { stageOf as stageKeptBy, startMs, unit, type Stage } from './guided-stage';
import { postJson, type RunningApp } from './running-app';

const keep = stopAfterEach();
const stageOf = stageKeptBy(keep);
const tests = `/api/units/${unit}/guided-tests`;

const list = async (app: RunningApp): Promise<GuidedList> => guidedListSchema.parse(await app.get(tests));
const codes = async (app: RunningApp, kind: string): Promise<readonly string[]> =>
  (await list(app)).offers.find((offer) => offer.kind === kind)?.refusals.map(({ code }) => code) ?? ['absent'];

async function act(app: RunningApp, path: string, body: object): Promise<GuidedTest> {
  const reply = await app.send(path, postJson({ operator: 'Ines', ...body }));
  const told: unknown = await reply.json();
  expect(reply.status, JSON.stringify(told)).toBe(200);
  return guidedTestSchema.parse(told);
}

/** Begins a test and confirms its steps until the program measures. */
async function measuring(app: RunningApp, kind: string, settings: object = {}): Promise<GuidedTest> {
  let now = await act(app, tests, { kind, settings, comment: 'by the quarter' });
  expect(now.steps[0]?.cautions.join(' ')).toMatch(/local codes/i);
  while (now.state === 'confirm') now = await confirmed(app, now);
  expect(now.state).toBe('measure');
  return now;
}
const confirmed = (app: RunningApp, { id, step }: GuidedTest, more: object = {}): Promise<GuidedTest> =>
  act(app, `${tests}/${encodeURIComponent(id)}/confirm`, { step, ...more });
const figureOf = ({ result }: GuidedTest, title: string) => result?.figures.find((one) => one.title === title);
async function valueOf(app: RunningApp, point: string): Promise<number> {
  const { points } = await app.get<PointList>(`/api/units/${unit}/points`);
  return points.find(({ id }) => id === point)?.value ?? Number.NaN;
}
/** Plays on, at most so many seconds, until the step that measures is over. */
async function untilStep(stage: Stage, test: GuidedTest, withinS: number, changed: object = {}): Promise<GuidedTest> {
  const fromS = stage.atS();
  let now = await find(stage.app, test);
  while (now.state === 'measure' && stage.atS() < fromS + withinS) {
    await stage.to(stage.atS() + 30, { ...changed });
    now = await find(stage.app, test);
  }
  expect(now.state, JSON.stringify(now.live)).not.toBe('measure');
  return now;
}
/** The same, until the whole test is over: nobody is asked meanwhile. */
async function untilEnded(stage: Stage, test: GuidedTest, withinS: number, changed: object = {}): Promise<GuidedTest> {
  const fromS = stage.atS();
  let now = await find(stage.app, test);
  while (now.state !== 'ended' && stage.atS() < fromS + withinS) {
    await stage.to(stage.atS() + 30, { ...changed });
    now = await find(stage.app, test);
  }
  return now;
}
const find = async (app: RunningApp, { id }: GuidedTest): Promise<GuidedTest> =>
  guidedTestSchema.parse(await app.get(`${tests}/${encodeURIComponent(id)}`));

test('a zero check of a unit that was vented for work: refused before, then each sensor beside barometer and head, and one that is off is named', async () => {
  const { app, to } = await stageOf(
    [
      {
        atS: 30,
        command: { fault: 'sensorDrift', unit, point: 'pump.inlet.pressure', size: 'usual', action: 'start' },
      },
      { atS: 40, command: { operation: 'vent', unit } },
    ],
    1500,
  );
  await to(20);
  expect(await codes(app, 'zeroCheck')).toEqual(
    expect.arrayContaining(['GUIDED_SOURCE_RUNS', 'GUIDED_FLOW', 'GUIDED_NOT_VENTED']),
  );
  const refused = await app.send(tests, postJson({ kind: 'zeroCheck', operator: 'Ines' }));
  expect(refused.status).toBe(409);
  await to(900);
  expect(await codes(app, 'zeroCheck')).toEqual([]);
  const begun = await measuring(app, 'zeroCheck');
  expect(begun.live?.watched.length).toBeGreaterThan(3);
  await to(930);
  expect((await find(app, begun)).live).toMatchObject({ samples: expect.any(Number) as number, seconds: 30 });
  const survey: GuidedSurvey = guidedSurveySchema.parse(await app.get('/api/guided-tests'));
  expect(survey.units).toMatchObject([{ unit, open: { id: begun.id } }]);
  await to(1200);
  const ended = await find(app, begun);
  expect(ended).toMatchObject({ state: 'ended', endedFor: 'completed', verdict: 'fails' });
  const figures = new Map(ended.result?.figures.map((figure) => [figure.title, figure]));
  // Drawn once within ±0.4 kPa, beside the barometer's ±0.1 kPa: no sound sensor is off by more.
  for (const title of ['Supply tank', 'Supply main', 'Return main', 'Separator'])
    expect(Math.abs(figures.get(title)?.value ?? NaN), title).toBeLessThan(550);
  // The fault drifts by 2 kPa.
  expect(figures.get('Pump inlet')).toMatchObject({ verdict: 'fails' });
  expect(Math.abs(figures.get('Pump inlet')?.value ?? NaN)).toBeGreaterThan(1400);
  const { rows } = await app.get<{ rows: { reason: string | null }[] }>('/api/alarms/journal');
  const said = rows.map(({ reason }) => reason ?? '').filter((reason) => reason.startsWith('guided test'));
  expect(said).toMatchObject([
    'guided test “Zero check of pressures” begun: by the quarter',
    'guided test “Zero check of pressures”, confirmed: What may hurt someone',
    'guided test “Zero check of pressures”, confirmed: The unit is vented and stands',
    expect.stringMatching(/ended\. Fails: 1 of [45]/),
  ]);
}, 120_000);

test('on the running plant: a heat balance that is that of the plant, a load test, a plate at three points, and both change-overs', async () => {
  const stage = await stageOf([], 6000);
  const { app, to, restart } = stage;
  await to(240);
  expect(await codes(app, 'heatBalance')).toEqual([]);
  const begun = await measuring(app, 'heatBalance', { differ: 15 });
  await to(300);
  expect((await find(app, begun)).live?.watched.map(({ title }) => title)).toContain('Chip power');
  const ended = await untilEnded(stage, begun, 1500);
  expect(ended, JSON.stringify(ended.live)).toMatchObject({ state: 'ended', endedFor: 'completed' });
  // The parameter set of unit M: 208 of 240 kW go into the water.
  const capture = figureOf(ended, 'Heat removed ÷ chip power');
  expect(Math.abs((capture?.value ?? NaN) - 208 / 240)).toBeLessThan(capture?.expandedUncertainty ?? NaN);
  const sides = figureOf(ended, 'Facility heat ÷ heat removed');
  expect(Math.abs((sides?.value ?? NaN) - 1)).toBeLessThan(sides?.expandedUncertainty ?? NaN);
  expect(ended.verdict).not.toBe('fails');

  const load = await measuring(app, 'loadTest', { minutes: 10, load: 40, plate: 90 });
  const loaded = await untilEnded(stage, load, 2400);
  expect(loaded, JSON.stringify(loaded.live)).toMatchObject({ endedFor: 'completed', verdict: 'passes' });
  expect(figureOf(loaded, 'Peak of the hottest plate')?.value).toBeGreaterThanOrEqual(
    figureOf(loaded, 'The hottest plate, settled')?.value ?? NaN,
  );
  expect(loaded.result?.notes.join()).toMatch(/Hottest at its peak: Chip r\d[ab] at [4-8]\d/);

  // One plate is let stand at 60 °C: what the bench's meters would read is typed so that it lies on a curve.
  const truth = (flow: number): number => 0.012 + 0.02 * flow ** -0.8;
  let plate = await act(app, tests, {
    kind: 'plateResistance',
    settings: { plate: 'r1a', meters: 'Power 4711, flow 4712', points: 3 },
  });
  plate = await confirmed(app, plate);
  for (const flow of [0.6, 1, 1.8]) {
    await to(stage.atS() + 30, { 'chips.r1a.t': 60 });
    const power = (60 - (await valueOf(app, 'supply.temperature'))) / truth(flow);
    plate = await confirmed(app, plate, { given: { power, powerBand: power / 100, flow, flowBand: 0.005 } });
    plate = await untilStep(stage, plate, 600, { 'chips.r1a.t': 60 });
  }
  expect(plate).toMatchObject({
    endedFor: 'completed',
    result: { curve: { law: expect.stringContaining('R₀') as string } },
  });
  const [fixed] = plate.result?.curve?.terms ?? [];
  expect(Math.abs((fixed?.value ?? NaN) - 0.012)).toBeLessThan(fixed?.expandedUncertainty ?? NaN);

  // The simulated unit changes nothing over by itself: what a controller would tell of its pumps and sources is written over.
  const pumps = await measuring(app, 'pumpChangeOver');
  const ordered = await confirmed(app, await untilStep(stage, pumps, 300));
  expect(ordered).toMatchObject({ state: 'measure', step: 'exchange' });
  await to(stage.atS() + 5, { 'pump.standbyRun': true });
  const onStandby = { 'pump.standbyRun': true, 'pump.run': false } as const;
  const changed = await untilEnded(stage, pumps, 300, onStandby);
  expect(changed, changed.summary).toMatchObject({ endedFor: 'completed', verdict: 'passes' });
  expect(figureOf(changed, 'Seconds until the standby pump alone moved the water')?.value).toBeGreaterThan(4);
  expect(await codes(app, 'pumpChangeOver')).toEqual(['GUIDED_STANDBY_RUNS']);

  const sources = await measuring(app, 'changeOver');
  await confirmed(app, await untilStep(stage, sources, 300, onStandby));
  await to(stage.atS() + 10, { ...onStandby, 'vacuum.standbyRun': true, 'vacuum.run': false });
  const halfway = await find(app, sources);
  expect(halfway).toMatchObject({ state: 'measure', step: 'after' });
  const after = await restart();
  const interrupted = await find(after, sources);
  expect(interrupted).toMatchObject({ state: 'ended', endedFor: 'interrupted', verdict: null, endedBy: null });
  expect(interrupted.summary).toMatch(/restarted.*No verdict.*bring the lead back/);
  expect(interrupted.steps.find(({ id }) => id === 'before')?.readings.length).toBeGreaterThan(0);
  expect(guidedListSchema.parse(await after.get(tests)).tests.map(({ kind }) => kind)).toEqual([
    'changeOver',
    'pumpChangeOver',
    'plateResistance',
    'loadTest',
    'heatBalance',
  ]);
  const report = await after.get<{ tests: { what: string }[] }>(
    `/api/report?from=${new Date(startMs).toISOString()}&to=${new Date(startMs + 3600_000).toISOString()}`,
  );
  expect(report.tests.map(({ what }) => what).join('\n')).toMatch(/Load test.*ended\. Passes/);
}, 600_000);

test('a small opening on a unit in standby: shut until a permit and the second person are there; what comes in is what its bore lets in', async () => {
  const branch = 'r5';
  const { app, to } = await stageOf(
    [
      { atS: 20, command: { operation: 'standby', unit } },
      { atS: 530, command: { operation: 'openHose', unit, branch, freeLPerMin: 30 } },
      { atS: 700, command: { operation: 'closeHose', unit, branch } },
    ],
    1100,
  );
  await to(400);
  expect(await codes(app, 'cutLine')).toEqual(['GUIDED_PERMIT']);
  const permit = await app.send(
    '/api/permits',
    postJson({
      ...{ unit, branch, operator: 'Ines', comment: 'trial', expectedInLeak: 40 / 60_000 },
      until: new Date(startMs + 7_200_000).toISOString(),
    }),
  );
  expect(permit.status).toBe(200);
  await to(405);
  expect(await codes(app, 'cutLine')).toEqual([]);
  const settings = { branch, bore: 2.15, second: 'Otto', permit: 'W-17' };
  let now = await act(app, tests, { kind: 'cutLine', settings });
  now = await confirmed(app, await confirmed(app, now));
  expect(now.step).toBe('second');
  const path = `${tests}/${encodeURIComponent(now.id)}/confirm`;
  // Neither under another name, nor past the step, nor in a name that the session is not.
  for (const [body, status] of [
    [{ step: 'second', operator: 'Ines' }, 409],
    [{ step: 'opened', operator: 'Ines' }, 409],
  ] as const)
    expect((await app.send(path, postJson(body))).status).toBe(status);
  const proof = await app.signIn.proof('Ines');
  const asOtto = await fetch(`${app.url}${path}`, {
    ...postJson({ step: 'second', operator: 'Otto' }),
    headers: { 'content-type': 'application/json', ...proof },
  });
  expect(asOtto.status).toBe(409);
  now = await confirmed(app, now, { operator: 'Otto' });
  await to(525);
  now = await find(app, now);
  expect(now, JSON.stringify([now.live, now.refusals, now.summary])).toMatchObject({ step: 'opened' });
  await confirmed(app, now);
  await to(695);
  now = await find(app, now);
  expect(now, JSON.stringify([now.live, now.summary])).toMatchObject({ step: 'closed' });
  await confirmed(app, now);
  await to(1100);
  now = await find(app, now);
  expect(now, JSON.stringify([now.live, now.summary])).toMatchObject({ endedFor: 'completed', verdict: 'passes' });
  // 30 free L/min at 2.15 mm, choked, C_d 0.7 (NACA Report 1135: 26 at 2 mm).
  const air = figureOf(now, 'Air that came in');
  expect(Math.abs((air?.value ?? NaN) * 60_000 - 30)).toBeLessThan((air?.expandedUncertainty ?? NaN) * 60_000 + 1);
}, 600_000);
