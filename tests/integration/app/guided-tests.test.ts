import type { GuidedList, GuidedSurvey, GuidedTest } from '@ebbline/shared/contract/guided-test';
import { guidedListSchema, guidedSurveySchema, guidedTestSchema } from '@ebbline/shared/contract/guided-test';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { stringify } from 'yaml';
import { demoFleet } from '../../../simulator/src/scenario/demo-fleet';
import { recordTelemetry } from '../../../simulator/src/scenario/record-telemetry';
import type { ScheduledCommand } from '../../../simulator/src/scenario/schedule';
import { startRoomyBroker } from '../../helpers/broker';
import { connectPlayer } from '../../helpers/player';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { siteOfUnits } from '../../stories/site-of-units';
import { postJson, startApp, type RunningApp } from './running-app';

const keep = stopAfterEach();
const startMs = Date.UTC(2031, 4, 6, 7, 0, 0);
const unit = 'N3';
const tests = `/api/units/${unit}/guided-tests`;

interface Stage {
  readonly app: RunningApp;
  /** Plays the simulated plant up to so many seconds after the start. */
  to(seconds: number): Promise<void>;
}

/** The simulated plant of one unit before the program, through a real broker, on the source clock. */
async function stageOf(schedule: readonly ScheduledCommand[], seconds: number): Promise<Stage> {
  const folder = keep(await temporaryFolder());
  const site = join(folder.path, 'site.yaml');
  await writeFile(site, stringify(siteOfUnits([unit]), { aliasDuplicateObjects: false }));
  const broker = keep(await startRoomyBroker());
  const variables = { EBBLINE_CLOCK: 'source', EBBLINE_MQTT_URL: broker.url, EBBLINE_SITE: site };
  const app = keep(await startApp({ variables }));
  const heard = async (): Promise<number> => (await app.get<{ messages: number }>('/api/intake')).messages;
  const player = keep(await connectPlayer(broker, heard));
  const units = demoFleet.filter(({ id }) => id === unit);
  const telemetry = recordTelemetry({ seed: 1, startMs, units, schedule, seconds });
  let next = telemetry.next();
  return {
    app,
    async to(untilS) {
      const messages = [];
      while (next.done !== true && next.value.sourceMs <= startMs + untilS * 1000) {
        messages.push(next.value);
        next = telemetry.next();
      }
      await player.play(messages);
    },
  };
}

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
  while (now.state === 'confirm')
    now = await act(app, `${tests}/${encodeURIComponent(now.id)}/confirm`, { step: now.step });
  expect(now.state).toBe('measure');
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

test('a heat balance of the running plant: steady within minutes, its share of chip power is that of the plant', async () => {
  const { app, to } = await stageOf([], 1500);
  await to(240);
  expect(await codes(app, 'heatBalance')).toEqual([]);
  const begun = await measuring(app, 'heatBalance', { differ: 15 });
  await to(300);
  expect((await find(app, begun)).live?.watched.map(({ title }) => title)).toContain('Chip power');
  await to(1500);
  const ended = await find(app, begun);
  expect(ended, JSON.stringify(ended.live)).toMatchObject({ state: 'ended', endedFor: 'completed' });
  const figure = (title: string) => ended.result?.figures.find((one) => one.title === title);
  // The parameter set of unit M: 208 of 240 kW go into the water.
  const capture = figure('Heat removed ÷ chip power');
  expect(Math.abs((capture?.value ?? NaN) - 208 / 240)).toBeLessThan(capture?.expandedUncertainty ?? NaN);
  const sides = figure('Facility heat ÷ heat removed');
  expect(Math.abs((sides?.value ?? NaN) - 1)).toBeLessThan(sides?.expandedUncertainty ?? NaN);
  expect(ended.verdict).not.toBe('fails');
}, 120_000);
