import { describe, expect, it } from 'vitest';
import { refusalCodes } from '../../../backend/src/evaluation/sample/acceptance';
import { figureOf, readOpenMetrics, type ReadFamily } from '../../helpers/open-metrics';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { connectScreen, startApp, type RunningApp } from './running-app';
import { connectSender } from './telemetry';

const keep = stopAfterEach();

async function scrape(app: RunningApp): Promise<ReadonlyMap<string, ReadFamily>> {
  const reply = await app.send('/api/metrics');
  expect(reply.status).toBe(200);
  const [type, ...parameters] = (reply.headers.get('content-type') ?? '').split(/; */);
  expect([type, ...parameters.sort()]).toEqual(['application/openmetrics-text', 'charset=utf-8', 'version=1.0.0']);
  return readOpenMetrics(await reply.text());
}

const series = (families: ReadonlyMap<string, ReadFamily>): number =>
  [...families.values()].reduce((sum, { samples }) => sum + samples.length, 0);

const routesOf = (families: ReadonlyMap<string, ReadFamily>): ReadonlySet<string> =>
  new Set(families.get('ebbline_http_requests')?.samples.map(({ labels }) => labels['route'] ?? ''));

describe('own metrics', () => {
  it('agree with what a real client sent, asked for and was shown', async () => {
    const app = keep(await startApp());
    const sender = keep(await connectSender(app.mqttUrl));
    const screen = keep(connectScreen(app.url));
    screen.show({ screen: 'loop', unit: 'm1' });
    const atMs = Date.now();
    for (let i = 0; i < 5; i += 1) await sender.m1(atMs - 5000 + i * 1000);
    await sender.m1(atMs - 1000);
    for (let i = 0; i < 7; i += 1) await sender.raw('small/m2/supply/t', `warm ${i}`);
    for (let i = 0; i < 3; i += 1) await app.get('/api/units/m1/points');
    for (let i = 0; i < 2; i += 1) await app.get(`/api/units/no-such-unit-${i}/points`);
    await app.send('/api/alarms/m1%3AAIR-1/acknowledge', { method: 'POST', body: 'no JSON' });
    const read = await until(async () => {
      const families = await scrape(app);
      const written = figureOf(families, 'ebbline_history_commit_seconds_count') > 0;
      return figureOf(families, 'ebbline_intake_messages_total') === 13 && written && screen.frames.length > 0
        ? families
        : null;
    });
    expect(figureOf(read, 'ebbline_intake_refused_messages_total', { reason: 'PAYLOAD_NOT_NUMBER' })).toBe(7);
    expect(read.get('ebbline_intake_refused_messages')?.samples).toHaveLength(refusalCodes.length);
    const samples = figureOf(read, 'ebbline_intake_samples_total');
    const repeated = figureOf(read, 'ebbline_intake_repeated_samples_total');
    expect(samples).toBe(5 * repeated);
    expect(figureOf(read, 'ebbline_broker_connected')).toBe(1);
    expect(figureOf(read, 'ebbline_units')).toBe(2);
    expect(figureOf(read, 'ebbline_units_silent')).toBe(1);
    expect(figureOf(read, 'ebbline_live_feed_clients')).toBe(1);
    expect(figureOf(read, 'ebbline_live_feed_sent_frames_total')).toBeGreaterThan(0);
    const asked = (route: string, status: string): number =>
      figureOf(read, 'ebbline_http_requests_total', { route, status });
    expect(asked('/api/units/{unit}/points', '2xx')).toBe(3);
    expect(asked('/api/units/{unit}/points', '4xx')).toBe(2);
    expect(asked('/api/alarms/{id}/acknowledge', '4xx')).toBe(1);
    expect(figureOf(read, 'ebbline_evaluation_slice_seconds_count')).toBeGreaterThan(0);
    expect(figureOf(read, 'ebbline_evaluation_tick_seconds_count')).toBeGreaterThan(0);
    expect(figureOf(read, 'ebbline_history_entries_total')).toBeGreaterThan(0);
    expect(figureOf(read, 'ebbline_process_resident_memory_bytes')).toBeGreaterThan(10e6);
    expect(figureOf(read, 'ebbline_unwell', { reason: 'JOURNAL_FAILING' })).toBe(0);
    expect(app.faults).toEqual([]);
  });

  it('grow by no path, topic or unit that a client makes up', async () => {
    const app = keep(await startApp());
    const sender = keep(await connectSender(app.mqttUrl));
    // What signs in and reads before is counted too.
    await scrape(app);
    const before = await scrape(app);
    for (let i = 0; i < 300; i += 1) {
      await Promise.all([
        sender.raw(`small/${i}/${'x'.repeat(i)}`, `${i}`, { qos: 0 }),
        app.send(`/api/units/u${i}/points?q=${i}`),
        app.send(`/api/${i}/"quoted"`),
        app.send(`/nowhere/${i}`),
      ]);
    }
    const after = await scrape(app);
    // Three routes, each with one class of status.
    expect(series(after) - series(before)).toBe(3);
    const added = [...routesOf(after)].filter((route) => !routesOf(before).has(route));
    expect(new Set(added)).toEqual(new Set(['/api/units/{unit}/points', 'unknown', 'screens']));
  });
});
