import { readFile, writeFile } from 'node:fs/promises';
import { connect } from 'node:net';
import { join } from 'node:path';
import type { Health, Intake } from '@ebbline/shared/contract/http-api';
import { expect, it } from 'vitest';
import { LINES_A_MINUTE } from '../../../backend/src/connections/logs/bounded-log';
import { refusalCodes, type RefusalCode } from '../../../backend/src/evaluation/sample/acceptance';
import { startEbbline, type Ebbline } from '../../helpers/ebbline';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { smallSiteFile } from '../app/running-app';
import { connectSender, telemetryOfM1, topicOfM1, type Sender } from '../app/telemetry';
import { builtDataFolder } from './built-data-folder';

const keep = stopAfterEach();

const ROUNDS = 2000;
/** Of them in the first part, after which memory is looked at for the first time. */
const WARM_UP = 500;
/** Generous: a program that kept each of some 24,000 bad messages with 3 KB would be above it. */
const GROWTH_MB = 70;

const returnOf = (payload: string): [string, string] => ['small/m2/return/t', payload];
/** A message that is refused with this code, and leaves no sample. */
const bad: Readonly<
  Record<RefusalCode, (i: number, nowMs: number) => readonly [topic: string, payload: string | Buffer]>
> = {
  TOPIC_UNKNOWN: (i) => [`small/nowhere/${i}/${'x'.repeat(100)}`, '1'],
  PAYLOAD_TOO_LARGE: () => ['small/m2/flow', Buffer.alloc(5000, 0x31)],
  PAYLOAD_EMPTY: () => ['small/m2/flow', ''],
  PAYLOAD_NOT_UTF8: (i) => ['small/m2/flow', Buffer.from([0xff, i & 0xff, 0xc0])],
  PAYLOAD_NOT_NUMBER: (i) => ['small/m2/flow', `flow ${i}`],
  PAYLOAD_NOT_JSON: (i) => returnOf(`{"v":${i}`),
  PAYLOAD_NOT_OBJECT: (i) => returnOf(`[${i}]`),
  PAYLOAD_TOO_DEEP: () => returnOf(`${'{"v":'.repeat(200)}1${'}'.repeat(200)}`),
  FIELD_MISSING: (_, nowMs) => returnOf(`{"ts":${nowMs}}`),
  VALUE_NOT_NUMBER: (_, nowMs) => returnOf(`{"v":{},"ts":${nowMs}}`),
  VALUE_NOT_FINITE: (_, nowMs) => returnOf(`{"v":1e999,"ts":${nowMs}}`),
  VALUE_WORD_UNKNOWN: (i) => ['small/m2/pump/run', `PERHAPS ${i}`],
  TIME_MISSING: (i) => returnOf(`{"v":${i}}`),
  TIME_MALFORMED: (i) => returnOf(`{"v":${i},"ts":"noon"}`),
  TIME_FUTURE: (i, nowMs) => returnOf(`{"v":${i},"ts":${nowMs + 86_400_000}}`),
  TIME_TOO_OLD: (i, nowMs) => returnOf(`{"v":${i},"ts":${nowMs - 30 * 86_400_000}}`),
};

/** Bytes that are no MQTT at all, or break off, on connections of their own. */
function garble(port: number, i: number): void {
  const socket = connect(port, '127.0.0.1').on('error', () => undefined);
  const bytes = Buffer.from(Array.from({ length: 600 }, (_, k) => (k * 131 + i * 7919) & 0xff));
  socket.end(i % 3 === 0 ? bytes : Buffer.concat([Buffer.from([0x10, 0xff, 0xff, 0xff, 0x7f]), bytes]));
}

/** One bad message of each kind and one good one, again and again. */
async function flood(sender: Sender, port: number, from: number, to: number, startMs: number): Promise<void> {
  for (let i = from; i < to; i++) {
    const nowMs = Date.now();
    const sent = Object.values(bad).map((make) => {
      const [topic, payload] = make(i, nowMs);
      return sender.raw(topic, payload, { qos: 0 });
    });
    await Promise.all([...sent, sender.raw(topicOfM1, telemetryOfM1(startMs + i), { qos: 1 })]);
    if (i % 20 === 0) garble(port, i);
  }
}

const residentMb = async ({ pid }: Ebbline): Promise<number> =>
  Number(/^VmRSS:\s+(\d+) kB/m.exec(await readFile(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024;

interface LogLine {
  readonly time: string;
  readonly level: string;
  readonly room: string;
  readonly code: string;
  readonly message: string;
  readonly counts?: { readonly more?: number };
}

/** Every line that was printed is one JSON object. */
const linesOf = (output: string): readonly LogLine[] =>
  output
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as LogLine);

it('a flood of bad bytes is refused and counted one by one; a good unit beside it loses nothing, memory and log stay bounded', async () => {
  const startedMs = Date.now();
  const data = keep(await builtDataFolder());
  const siteFile = join(data.path, 'site.yaml');
  const text = await readFile(smallSiteFile, 'utf8');
  await writeFile(siteFile, text.replace('intake:\n', "intake:\n  subscriptions: ['small/#']\n"));
  const ebbline = keep(
    await startEbbline({
      data: data.path,
      env: { EBBLINE_SITE: siteFile, EBBLINE_SIMULATOR: 'off', EBBLINE_LOG: 'json' },
    }),
  );
  const { broker } = await ebbline.get<Health>('/api/health');
  const port = Number(broker.address.split(':').at(-1));
  const sender = keep(await connectSender(`mqtt://${broker.address}`));
  const intake = (): Promise<Intake> => ebbline.get<Intake>('/api/intake');
  const messages = (rounds: number): number => rounds * (refusalCodes.length + 1);
  const all = (rounds: number): Promise<Intake> =>
    until(async () => ((await intake()).messages === messages(rounds) ? intake() : null), {
      withinMs: 120_000,
      everyMs: 50,
      what: `${messages(rounds)} messages`,
    });
  const startMs = Date.now() - 60_000;

  await flood(sender, port, 0, 1, startMs);
  const points = (await all(1)).samples;
  expect(points).toBeGreaterThan(10);
  await flood(sender, port, 1, WARM_UP, startMs);
  await all(WARM_UP);
  const before = process.platform === 'linux' ? await residentMb(ebbline) : 0;
  await flood(sender, port, WARM_UP, ROUNDS, startMs);

  const counted = await all(ROUNDS);
  expect(counted).toMatchObject({ samples: ROUNDS * points, late: 0, repeated: 0 });
  expect(Object.fromEntries(counted.refusals.map(({ code, count }) => [code, count]))).toEqual(
    Object.fromEntries(refusalCodes.map((code) => [code, ROUNDS])),
  );
  expect(counted.topics.length).toBeLessThanOrEqual(1000);
  if (process.platform === 'linux') expect((await residentMb(ebbline)) - before).toBeLessThan(GROWTH_MB);
  expect((await ebbline.get<Health>('/api/health')).status).toBe('ok');

  await ebbline.stop();
  const told = linesOf(ebbline.output()).filter(({ room }) => room === 'intake');
  const minutes = Math.ceil((Date.now() - startedMs) / 60_000) + 1;
  expect(told.length).toBeLessThanOrEqual(minutes * refusalCodes.length * (LINES_A_MINUTE + 1));
  const sums = new Map<string, number>();
  for (const { code, counts } of told) sums.set(code, (sums.get(code) ?? 0) + (counts?.more ?? 1));
  expect(Object.fromEntries(sums)).toEqual(Object.fromEntries(refusalCodes.map((code) => [code, ROUNDS])));
}, 600_000);
