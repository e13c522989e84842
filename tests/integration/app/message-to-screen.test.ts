import type { Health, HistoryColumns, Intake, PointList } from '@ebbline/shared/contract/http-api';
import type { LoopFrame } from '@ebbline/shared/contract/live-feed';
import { describe, expect, it } from 'vitest';
import { startBroker } from '../../helpers/broker';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { connectScreen, startApp } from './running-app';
import { connectSender } from './telemetry';

const keep = stopAfterEach();

const pointOf = (list: PointList, id: string) => list.points.find((point) => point.id === id);

describe('a message from any MQTT client', () => {
  it('is in the interface and on the screen, in SI, with its time and quality', async () => {
    const app = keep(await startApp());
    const sender = keep(await connectSender(app.mqttUrl));
    const screen = keep(connectScreen(app.url));
    screen.show({ screen: 'loop', unit: 'm1' });
    const atMs = Date.now();
    await sender.m1(atMs);
    const shown = await until(() => {
      const frame = screen.frames.at(-1) as LoopFrame | undefined;
      const flow = frame?.points.find(({ id }) => id === 'loop.flow');
      return typeof flow?.value === 'number' ? flow : null;
    });
    // 346 L/min; 1 L = 10⁻³ m³ and 1 min = 60 s (SI brochure, table 8).
    expect(shown.value).toBeCloseTo(346 / 60_000, 12);
    const list = await app.get<PointList>('/api/units/m1/points');
    expect(pointOf(list, 'loop.flow')).toMatchObject({
      unit: 'm3/s',
      quality: 'good',
      time: new Date(atMs).toISOString(),
    });
    expect(pointOf(list, 'mode')).toBeDefined();
    expect(list.mode).toBe('running');
    expect(pointOf(list, 'ambient.pressure')).toMatchObject({ value: null, reasons: ['notReceived'] });
    expect(app.faults).toEqual([]);
  });

  it('is counted by topic, and one that can not be used is told with code and example', async () => {
    const app = keep(await startApp());
    const sender = keep(await connectSender(app.mqttUrl));
    await sender.m1(Date.now());
    await sender.raw('small/m2/supply/t', 'warm\u0007');
    const intake = await until(async () => {
      const told = await app.get<Intake>('/api/intake');
      return told.messages === 2 ? told : null;
    });
    expect(intake.topics).toContainEqual({ topic: 'small/m2/supply/t', messages: 1, refused: 1 });
    expect(intake.refusals).toHaveLength(1);
    expect(intake.refusals[0]).toMatchObject({
      count: 1,
      example: { topic: 'small/m2/supply/t', payloadStart: 'warm.' },
    });
  });

  it('that is delivered twice is counted as two messages and kept as one sample', async () => {
    const app = keep(await startApp());
    const sender = keep(await connectSender(app.mqttUrl));
    const atMs = Date.now();
    const counted = (messages: number) =>
      until(async () => {
        const intake = await app.get<Intake>('/api/intake');
        return intake.messages === messages ? intake : null;
      });
    await sender.m1(atMs);
    const once = await counted(1);
    expect(once.samples).toBeGreaterThan(0);
    await sender.m1(atMs);
    expect((await counted(2)).samples).toBe(once.samples);
  });

  it('of unknown age, because retained, is not judged until a live one comes', async () => {
    const broker = keep(await startBroker());
    const sender = keep(await connectSender(broker.url));
    await sender.raw('small/m2/supply/t', '95', { retain: true });
    const app = keep(await startApp({ variables: { EBBLINE_MQTT_URL: broker.url } }));
    const supply = async () => pointOf(await app.get<PointList>('/api/units/m2/points'), 'supply.temperature');
    const kept = await until(async () => ((await supply())?.reasons.includes('ageUnknown') === true ? supply() : null));
    expect(kept).toMatchObject({ age: null, time: null, quality: 'bad' });
    await sender.raw('small/m2/supply/t', '95');
    const live = await until(async () => ((await supply())?.quality === 'good' ? supply() : null));
    // 95 °F = 35 °C (NIST SP 811, section B.8).
    expect(live?.value).toBeCloseTo(35, 9);
  });

  it('of QoS 1 is in history once the broker has our acknowledgement', async () => {
    const app = keep(await startApp());
    const sender = keep(await connectSender(app.mqttUrl));
    const atMs = Math.floor(Date.now() / 1000) * 1000 - 2000;
    for (let i = 0; i < 50; i++) await sender.m1(atMs + i * 20, { flow: 300 + i });
    const from = new Date(atMs).toISOString();
    const to = new Date(atMs + 1000).toISOString();
    const path = `/api/history?unit=m1&point=loop.flow&from=${from}&to=${to}&buckets=1`;
    const kept = await until(async () => {
      const columns = await app.get<HistoryColumns>(path);
      return columns.count[0] === 1 ? columns : null;
    });
    // One row a second: the last sample of that second.
    await until(async () => Math.abs(((await app.get<HistoryColumns>(path)).mean[0] ?? 0) - 349 / 60_000) < 1e-12);
    expect(kept).toMatchObject({
      unit: 'm1',
      point: 'loop.flow',
      unit_of_measure: 'm3/s',
      bucketMs: 1000,
      start: [from],
    });
  });
});

describe('health', () => {
  it('is starting before the first sample, then ok, and says how old the newest sample is', async () => {
    const app = keep(await startApp());
    const first = await app.get<Health>('/api/health');
    expect(first).toMatchObject({ status: 'starting', lastSampleAge: null, clock: { kind: 'wall' } });
    expect(first.broker).toMatchObject({ state: 'connected', embedded: true, note: null });
    const sender = keep(await connectSender(app.mqttUrl));
    await sender.m1(Date.now());
    const then = await until(async () => {
      const health = await app.get<Health>('/api/health');
      return health.lastSampleAge === null ? null : health;
    });
    expect(then.status).toBe('ok');
    expect(then.reasons).toEqual([]);
  });
});
