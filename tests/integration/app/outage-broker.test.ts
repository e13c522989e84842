import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { Health, HistoryColumns, Intake } from '@ebbline/shared/contract/http-api';
import { expect, it } from 'vitest';
import { connectClient } from '../../helpers/broker';
import { launchMosquitto } from '../../helpers/mosquitto';
import { pathOf, suiteNeeding } from '../../helpers/requirements';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { startApp, type RunningApp } from './running-app';
import { telemetryOfM1, topicOfM1 } from './telemetry';

const keep = stopAfterEach();
const isLong = process.env['EBBLINE_TEST_LONG'] === '1';
const kills = isLong ? 50 : 5;
const secondsARound = 12;
const startMs = Date.UTC(2031, 4, 6, 7, 8, 0);
const secondMs = 1000;

/** Water is found in the second and third round, then no more; its alarm stays until a person has acknowledged it. */
const isWet = (at: number): boolean => at >= secondsARound && at < 3 * secondsARound;
const flowAt = (at: number): number => 340 + (at % 7);
const message = (at: number): string =>
  telemetryOfM1(startMs + at * secondMs, { flow: flowAt(at), leak: isWet(at) ? 'wet' : 'dry' });

async function journal(app: RunningApp): Promise<readonly JournalRow[]> {
  const rows: JournalRow[] = [];
  for (let after: number | null = 0; after !== null;) {
    const page: { rows: JournalRow[]; next: number | null } = await app.get(`/api/alarms/journal?after=${after}`);
    rows.push(...page.rows);
    after = page.next;
  }
  return rows;
}

async function flows(app: RunningApp, seconds: number): Promise<HistoryColumns> {
  const [from, to] = [startMs, startMs + seconds * secondMs].map((ms) => new Date(ms).toISOString());
  const query = new URLSearchParams({
    unit: 'm1',
    point: 'loop.flow',
    from: from ?? '',
    to: to ?? '',
    buckets: `${seconds}`,
  });
  return app.get<HistoryColumns>(`/api/history?${query.toString()}`);
}

/** A gateway that keeps what it may not have got rid of: after each loss it sends the whole round again. */
async function sendRound(url: string, round: number, lost: Promise<unknown> | null): Promise<void> {
  const { client, stop } = await connectClient({ url });
  client.on('error', () => undefined);
  const sent = Array.from({ length: secondsARound }, (_, i) =>
    client.publishAsync(topicOfM1, message(round * secondsARound + i), { qos: 1 }),
  );
  await (lost ?? Promise.all(sent));
  await stop();
  await Promise.allSettled(sent);
}

suiteNeeding(['mosquitto'], 'a broker that is killed and started again and again', () => {
  it(
    `${kills} times leaves every second in history once, and every change of an alarm in the journal once`,
    { timeout: isLong ? 900_000 : 180_000 },
    async () => {
      const broker = keep(await launchMosquitto(pathOf('mosquitto')));
      const app = keep(await startApp({ variables: { EBBLINE_MQTT_URL: broker.url, EBBLINE_CLOCK: 'source' } }));
      const connected = (): Promise<unknown> =>
        until(async () => (await app.get<Health>('/api/health')).broker.state === 'connected', {
          everyMs: 50,
          what: 'the broker to be found again',
        });
      const taken = async (): Promise<number> => (await app.get<Intake>('/api/intake')).messages;
      await connected();
      for (let round = 0; round < kills; round++) {
        const before = await taken();
        const inTheMiddle = until(async () => (await taken()) > before, { everyMs: 1 }).then(() => broker.kill());
        await sendRound(broker.url, round, inTheMiddle);
        await until(async () => (await app.get<Health>('/api/health')).broker.state !== 'connected', { everyMs: 10 });
        await broker.restart();
        await connected();
        const again = await taken();
        await sendRound(broker.url, round, null);
        await until(async () => (await taken()) >= again + secondsARound, { everyMs: 20, what: 'the round' });
      }
      const seconds = kills * secondsARound;
      // The last second is over when a newer one has come.
      const { client } = keep(await connectClient(broker));
      await client.publishAsync(topicOfM1, message(seconds), { qos: 1 });
      const columns = await until(
        async () => {
          const found = await flows(app, seconds);
          return found.count.every((count) => count > 0) ? found : null;
        },
        { everyMs: 100, what: 'every second in history' },
      );
      expect(columns.count).toEqual(Array.from({ length: seconds }, () => 1));
      // 1 L/min = 1/60000 m³/s (SI brochure, table 8).
      columns.mean.forEach((mean, at) => expect(mean).toBeCloseTo(flowAt(at) / 60_000, 12));

      const water = (await journal(app)).filter(({ entry }) => entry === 'WATER-1');
      expect(water.map(({ from, to }) => `${from ?? ''}>${to ?? ''}`)).toEqual([
        'normal>unacknowledged',
        'unacknowledged>latchedUnacknowledged',
      ]);
      expect(app.faults).toEqual([]);
    },
  );
});
