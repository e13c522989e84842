import { readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { unitId } from '../../bench/bench-site';
import { startBroker } from '../../helpers/broker';
import { startEbbline } from '../../helpers/ebbline';
import { stopAfterAll } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { dataFolder } from '../data-folder';
import { writeSite } from '../row-of-units';
import { startFastPlant } from './fast-plant';

const units = 2;
const hourMs = 3_600_000;
const startMs = Date.UTC(2026, 0, 5, 6);
const keep = stopAfterAll();

test('an hour of history that is damaged is named, left as it is, and keeps nothing else from going on', async () => {
  const broker = keep(await startBroker());
  const data = keep(await dataFolder());
  const files = keep(await temporaryFolder());
  const env = {
    EBBLINE_SITE: await writeSite(files.path, units),
    EBBLINE_MQTT_URL: broker.url,
    EBBLINE_SIMULATOR: 'off',
    EBBLINE_CLOCK: 'source',
  };
  const plant = keep(await startFastPlant(broker, units, startMs));
  const folder = join(data.path, 'history/seconds');
  const first = keep(await startEbbline({ data: data.path, env }));
  const sealed = async () => {
    await plant.stretch();
    return readdirSync(folder).filter((name) => name.endsWith('.parquet')).length >= 3;
  };
  await until(sealed, { everyMs: 1000, what: 'three sealed hours' });
  await first.stop();

  const [cut = '', flipped = ''] = readdirSync(folder).sort();
  truncateSync(join(folder, cut), 100);
  // The last bytes of a Parquet file say where its table of contents begins (Apache Parquet format, "File Format").
  const bytes = readFileSync(join(folder, flipped));
  for (let at = bytes.length - 200; at < bytes.length - 8; at++) bytes[at] = (bytes[at] ?? 0) ^ 0xff;
  writeFileSync(join(folder, flipped), bytes);

  const second = keep(await startEbbline({ data: data.path, env }));
  const damage = async () => (await second.health()).reasons.find(({ code }) => code === 'HISTORY_DAMAGED');
  expect((await damage())?.message).toContain(cut);

  const ask = async (hour: string) => {
    const fromMs = Date.parse(`${hour.slice(0, 13)}:00:00Z`);
    const query = new URLSearchParams({
      unit: unitId(0),
      point: 'supply.temperature',
      from: new Date(fromMs).toISOString(),
      to: new Date(fromMs + hourMs).toISOString(),
      buckets: '3600',
    });
    const headers = await second.signIn.proof();
    const reply = await fetch(`${second.url}/api/history?${query.toString()}`, { headers });
    return { status: reply.status, body: (await reply.json()) as Readonly<Record<string, unknown>> };
  };
  for (const name of [cut, flipped])
    expect(await ask(name)).toMatchObject({
      status: 503,
      body: { code: 'HISTORY_UNAVAILABLE', detail: expect.stringContaining(name) as unknown },
    });
  expect((await damage())?.message).toContain(flipped);

  await plant.stretch();
  await plant.stretch();
  await plant.expectLatestKept(second, 2);
  expect((await second.alarms()).map(({ entry }) => entry)).toContain('WATER-1');
  expect(readFileSync(join(folder, flipped)).equals(bytes)).toBe(true);
  expect((await second.health()).status).toBe('degraded');
});
