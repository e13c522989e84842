import { appendFile, readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Intake } from '@ebbline/shared/contract/http-api';
import { expect, test } from 'vitest';
import { benchPoints } from '../bench/bench-points';
import { topicOf, unitId } from '../bench/bench-site';
import { payload } from '../bench/telemetry';
import { startBroker } from '../helpers/broker';
import { type Ebbline, startEbbline } from '../helpers/ebbline';
import { startInfluxd, type TestInflux } from '../helpers/influxd';
import { connectPlayer, type PlayedMessage } from '../helpers/player';
import { suiteNeeding } from '../helpers/requirements';
import { stopAfterAll } from '../helpers/stop-after';
import { temporaryFolder } from '../helpers/temporary-folder';
import { until } from '../helpers/until';
import { dataFolder } from './data-folder';
import { writeSite } from './row-of-units';

const isLong = process.env['EBBLINE_TEST_LONG'] === '1';
const units = isLong ? 50 : 1;
const hourS = 3600;
/** The server is there before, and again after, for so long. */
const aroundS = 60;
const database = 'quillmere';
const measured = benchPoints[0]?.id ?? '';

/** Every second of every unit, from one second to another after the start. */
function* telemetry(startMs: number, fromS: number, toS: number): Generator<PlayedMessage> {
  for (let at = fromS; at < toS; at++)
    for (let unit = 0; unit < units; unit++) {
      const sourceMs = startMs + at * 1000;
      yield { topic: topicOf(unit), payload: payload(unit, at, sourceMs), sourceMs };
    }
}

/** What InfluxDB itself counts and adds up of the measured point: by unit, rows and sum. */
async function stored(influx: TestInflux): Promise<Map<string, { rows: number; sum: number }>> {
  const figures = `SELECT count(/^${measured} /), sum(/^${measured} /) FROM ebbline_seconds.second GROUP BY holder`;
  const series = await influx.ask(database, figures);
  return new Map(
    series.map(({ tags, columns, values }) => {
      const at = (start: string): number =>
        Number(values[0]?.[columns.findIndex((name) => name.startsWith(start))] ?? Number.NaN);
      return [tags?.['holder'] ?? '', { rows: at('count'), sum: at('sum') }];
    }),
  );
}

const rowsWaiting = async (ebbline: Ebbline): Promise<string | undefined> =>
  (await ebbline.health()).reasons.find(({ code }) => code === 'HISTORY_FAILING' || code === 'HISTORY_BEHIND')?.message;

suiteNeeding(['influxdb', 'mosquitto'], 'a history server that is away for an hour at full rate', () => {
  const keep = stopAfterAll();

  test(
    'has every row once afterwards, though the program too was killed meanwhile, in the middle of a block',
    { timeout: isLong ? 3_600_000 : 600_000 },
    async () => {
      const influx = keep(await startInfluxd());
      const broker = keep(await startBroker());
      const data = keep(await dataFolder());
      const env = {
        EBBLINE_CLOCK: 'source',
        EBBLINE_SITE: await writeSite(keep(await temporaryFolder()).path, units),
        EBBLINE_MQTT_URL: broker.url,
        EBBLINE_SIMULATOR: 'off',
        EBBLINE_INFLUX_URL: `${influx.url}/${database}`,
      };
      let ebbline = await startEbbline({ data: data.path, env });
      let before = 0;
      const taken = async (): Promise<number> => before + (await ebbline.get<Intake>('/api/intake')).messages;
      const player = keep(await connectPlayer(broker, taken));
      // InfluxDB counts the days that it keeps on its own clock.
      const startMs = Math.floor(Date.now() / 1000) * 1000 - 3 * hourS * 1000;
      const [awayS, killedS, backS, endS] = [aroundS, aroundS + hourS / 2, aroundS + hourS, 2 * aroundS + hourS];

      await player.play(telemetry(startMs, 0, awayS));
      await influx.kill();
      await player.play(telemetry(startMs, awayS, killedS));
      await until(() => rowsWaiting(ebbline), { everyMs: 100, what: 'health to tell of rows that wait' });

      ebbline.child.kill('SIGKILL');
      await ebbline.exit;
      before = player.published();
      const queue = join(data.path, 'history-queue');
      const last =
        (await readdir(queue))
          .filter((name) => name.endsWith('.blocks'))
          .sort()
          .at(-1) ?? '';
      // As a kill leaves it that comes while a block is being written.
      await appendFile(join(queue, last), (await readFile(join(queue, last))).subarray(0, 100));

      ebbline = keep(await startEbbline({ data: data.path, env }));
      const told = (await ebbline.health()).reasons.find(({ code }) => code === 'HISTORY_ROWS_LOST');
      expect(told?.message).toMatch(/a block of 100 bytes was torn/);
      await player.play(telemetry(startMs, killedS, backS));
      const waiting = await rowsWaiting(ebbline);
      expect(waiting).toMatch(/rows from \S+ on wait on the disk/);

      const backMs = performance.now();
      await influx.restart();
      await player.play(telemetry(startMs, backS, endS));
      await until(async () => (await rowsWaiting(ebbline)) === undefined, {
        everyMs: 200,
        withinMs: isLong ? 1_800_000 : 300_000,
        what: 'the queue to be empty',
      });
      const filledS = (performance.now() - backMs) / 1000;
      console.log(`history after an hour away: ${waiting} Filled in within ${filledS.toFixed(1)} s.`);
      // The last second of a replay ends with the program.
      await ebbline.stop();

      const rows = await stored(influx);
      for (let unit = 0; unit < units; unit++) {
        const sent = Array.from(
          { length: endS },
          (_, at) => (JSON.parse(payload(unit, at, 0)) as Record<string, number>)[measured] ?? Number.NaN,
        );
        const found = rows.get(unitId(unit));
        expect(found?.rows).toBe(endS);
        expect(found?.sum).toBeCloseTo(
          sent.reduce((sum, value) => sum + value, 0),
          3,
        );
      }
    },
  );
});
